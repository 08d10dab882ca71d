/** What stands at the end of every sheet, whatever else it says. */
export const sheetCautions: readonly string[] = [
  'This sheet is no permit and replaces none. Trade, keeping and crossing borders are for the authority in charge, and a filial generation decides nothing there.',
  'The figures count only what the register knows. An inbreeding of 0 in a shallow pedigree says that nothing is known, not that nothing is there; read depth and completeness beside it.',
  'Founders that arrived together count as unrelated unless their source says otherwise.',
  'How well a label stands follows from the papers that a registrar accepted; it is no test of genes.',
  'Keep these animals in quarantine, and have their health checked, before they join others. Ask a veterinarian.',
  'Never release them, nor their young, nor the water and plants that they lived with.',
];
