import type { PlaceView } from './claim.view.ts';

type Place = Omit<PlaceView, 'dataGeneralizations' | 'informationWithheld'>;

/** A claimed place as whoever asks may know it: members exactly, strangers generalised, so that nobody is led to a wild place. */
export function shownPlace(place: Place, isStranger: boolean): PlaceView {
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
  return isStranger ? generalised(exact) : exact;
}

/** What a stranger is told of a place: its country and province; no words that may name the spot, and no coordinates. */
function generalised(place: PlaceView): PlaceView {
  const withheld = [
    place.verbatimLocality ?? place.locality,
    place.decimalLatitude,
    place.georeferencedBy ?? place.georeferenceSources,
  ].some((value) => value !== null);
  return {
    ...place,
    verbatimLocality: null,
    locality: null,
    decimalLatitude: null,
    decimalLongitude: null,
    geodeticDatum: null,
    coordinateUncertaintyM: null,
    georeferencedBy: null,
    georeferenceSources: null,
    informationWithheld: withheld
      ? 'The exact place is held back to protect wild animals; members of the club can see it.'
      : null,
  };
}
