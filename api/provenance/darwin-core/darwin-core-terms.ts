/** The namespace of the terms of Darwin Core (TDWG): the IRI of a term is the namespace and its name. */
export const DARWIN_CORE = 'http://rs.tdwg.org/dwc/terms/';

/** The terms that an animal is told in, in the order of the columns of Simple Darwin Core, and what each holds here. */
export const occurrenceTerms = {
  occurrenceID: 'The record, as an urn:uuid: IRI; it never changes.',
  basisOfRecord: 'LivingSpecimen: the animal lives, or lived, in a collection.',
  organismID: 'Registry number of the animal, the same with every keeper.',
  organismName: 'The code that its keeper calls it by.',
  scientificName: 'Scientific name of its species as the register has it.',
  kingdom: 'Animalia.',
  sex: 'male or female; left out where it is not known.',
  degreeOfEstablishment: 'captive.',
  eventDate:
    'ISO 8601 day, month, year or interval: of hatching, or where it was collected in the wild, of that. Left out where the date is open at an end.',
  verbatimEventDate: 'The same date as the register has it, EDTF.',
  eventRemarks: 'What the date is the date of.',
  locationID: 'The claim that the place stands in, as an urn:uuid: IRI.',
  countryCode: 'Country of the claimed place, ISO 3166-1.',
  stateProvince: 'Province or state of the claimed place.',
  locality: 'The claimed place in words of today; withheld from strangers.',
  verbatimLocality: 'The words of the label or list, unaltered; withheld from strangers.',
  decimalLatitude: 'Degrees, south negative; for strangers the centre of a cell of 0.1 degree or coarser.',
  decimalLongitude: 'Degrees, west negative; likewise.',
  geodeticDatum: 'Datum of the coordinates.',
  coordinateUncertaintyInMeters: 'Radius of the smallest circle that holds the whole place; never 0.',
  georeferencedBy: 'Who found the coordinates; withheld from strangers.',
  georeferenceSources: 'By which maps or papers; withheld from strangers.',
  georeferenceVerificationStatus:
    'requires georeference, or requires verification: nobody in the club visits the place.',
  locationAccordingTo: 'Whose word the place is; withheld from strangers.',
  locationRemarks: 'What the claim says, how well it stands and why.',
  dataGeneralizations: 'How the place was made coarser for whoever asks.',
  informationWithheld: 'What is held back from whoever asks.',
} as const;
export type OccurrenceTerm = keyof typeof occurrenceTerms;

/** The animal in these terms; what is not known is left out. */
export type OccurrenceTerms = Partial<Record<OccurrenceTerm, string | number>>;
