/** The keepers of the Mirewell Amphibian Circle. None of them exists. The first one keeps the register, as its registrar and administrator. */
export const keepers = {
  orla: 'Orla Venndrick',
  tobiah: 'Tobiah Quillmere',
  saskia: 'Saskia Brunmoor',
  emeric: 'Emeric Dahlhaven',
  runa: 'Runa Fenwarden',
  matthis: 'Matthis Korrand',
  noor: 'Noor Elstavik',
  corvin: 'Corvin Anscombray',
} as const;
