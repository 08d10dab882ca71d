import { generalisedPlace, type ExactPlace } from '../places/generalised-place.ts';
import type { PlaceView } from './claim.view.ts';

/** A claimed place as whoever asks may know it: members exactly, strangers generalised, so that nobody is led to a wild place. */
export function shownPlace(place: ExactPlace, isStranger: boolean): PlaceView {
  const exact: PlaceView = {
    verbatimLocality: place.verbatimLocality,
    locality: place.locality,
    countryCode: place.countryCode,
    stateProvince: place.stateProvince,
    decimalLatitude: place.decimalLatitude,
    decimalLongitude: place.decimalLongitude,
    geodeticDatum: place.geodeticDatum,
    coordinateUncertaintyM: place.coordinateUncertaintyM,
    georeferencedBy: place.georeferencedBy,
    georeferenceSources: place.georeferenceSources,
    dataGeneralizations: null,
    informationWithheld: null,
  };
  return isStranger ? generalisedPlace(exact) : exact;
}
