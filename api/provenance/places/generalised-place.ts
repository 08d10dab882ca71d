import { cellRadius } from './cell-radius.ts';
import { withoutPositions } from './words-of-place.ts';

/** A claimed place in the terms of Darwin Core, as exactly as it is known. */
export interface ExactPlace {
  readonly verbatimLocality: string | null;
  readonly locality: string | null;
  readonly countryCode: string | null;
  readonly stateProvince: string | null;
  /** Degrees, -90 to 90. */
  readonly decimalLatitude: number | null;
  /** Degrees, -180 to 180. */
  readonly decimalLongitude: number | null;
  readonly geodeticDatum: string | null;
  /** Radius of the smallest circle that holds the whole place, metres, above 0. */
  readonly coordinateUncertaintyM: number | null;
  readonly georeferencedBy: string | null;
  readonly georeferenceSources: string | null;
}

/** A place as the public sees it, which says what was made coarser and what is held back. */
export interface GeneralisedPlace extends ExactPlace {
  readonly dataGeneralizations: string | null;
  readonly informationWithheld: string | null;
}

/** Sides of the cells that places are generalised to, in tenths of a degree; each divides the globe evenly. */
const CELL_TENTHS = [1, 5, 10, 50, 100] as const;
/** A degree of latitude is at least this long on WGS 84, metres. */
const DEGREE_AT_LEAST = 110_574;
/** Half the circumference of the earth: no place is larger, metres. */
const UNCERTAINTY_MOST = 20_037_509;
const WITHHELD =
  'Where exactly the place lies, the words that describe it, and how it was located are withheld to protect wild animals; members of the club can see them.';
/** Names of datums that are passed on; another word may tell more than the datum. */
const DATUM = /^(?:EPSG:\d{4,5}|WGS ?-?84|WGS ?-?72|NAD ?-?(?:27|83)|SIRGAS ?2000|PSAD ?-?56|SAD ?-?69|ETRS ?89)$/iu;

/**
 * A place as the public may know it, so that nobody is led to wild animals. Country and province stay. Words that describe the place, and
 * who located it and how, are withheld. Coordinates become the centre of the cell of 0.1 degree that they lie in, or of the first larger one (0.5,
 * 1, 5, 10 degrees) that is as wide as they are uncertain; the uncertainty grows by the radius of that cell, so that the circle still holds
 * the whole place and the same for each place of the cell. Whatever is that general already stays as it is, so twice is the same as once.
 * On the meridian of 180 degrees there is one cell, not two; at a pole the cells end with it.
 */
export function generalisedPlace(place: ExactPlace & Partial<GeneralisedPlace>): GeneralisedPlace {
  const position = generalisedPosition(place);
  const { countryCode, stateProvince, ...told } = place;
  const isWithheld = Object.values(told).some((value) => value !== null);
  return {
    ...position.place,
    verbatimLocality: null,
    locality: null,
    countryCode,
    stateProvince: withoutPositions(stateProvince),
    georeferencedBy: null,
    georeferenceSources: null,
    dataGeneralizations: position.sentence ?? place.dataGeneralizations ?? null,
    informationWithheld: isWithheld ? WITHHELD : null,
  };
}

type Position = Pick<ExactPlace, 'decimalLatitude' | 'decimalLongitude' | 'geodeticDatum' | 'coordinateUncertaintyM'>;

const nowhere: Position = {
  decimalLatitude: null,
  decimalLongitude: null,
  geodeticDatum: null,
  coordinateUncertaintyM: null,
};

function generalisedPosition(place: ExactPlace): { place: Position; sentence: string | null } {
  const { decimalLatitude: latitude, decimalLongitude: longitude, coordinateUncertaintyM: uncertainty } = place;
  if (latitude === null || longitude === null) return { place: nowhere, sentence: null };
  const cell = cellOf(latitude, longitude, uncertainty);
  const radius = cell.isGeneralAlready ? (uncertainty ?? 0) : Math.ceil(uncertainty ?? 0) + cell.radius;
  return {
    place: {
      decimalLatitude: cell.latitude,
      decimalLongitude: cell.longitude,
      geodeticDatum: shownDatum(place.geodeticDatum),
      coordinateUncertaintyM: Math.min(radius, UNCERTAINTY_MOST),
    },
    sentence: cell.isGeneralAlready ? null : inWords(cell.size, uncertainty),
  };
}

interface Cell {
  /** Degrees. */
  readonly size: number;
  readonly latitude: number;
  readonly longitude: number;
  /** Metres. */
  readonly radius: number;
  /** Whether the place is the centre of the cell and its circle holds the cell. */
  readonly isGeneralAlready: boolean;
}

/** The cell that a place is generalised to: one that it fills already, else the smallest that is as wide as it is uncertain. */
function cellOf(latitude: number, longitude: number, uncertainty: number | null): Cell {
  const cells = CELL_TENTHS.map((tenths): Cell => {
    const size = tenths / 10;
    const centre = { latitude: centreOf(latitude, tenths, 90), longitude: centreOf(longitude, tenths, 180) };
    const radius = cellRadius(centre.latitude, size);
    const isCentre = centre.latitude === latitude && centre.longitude === longitude;
    return { size, ...centre, radius, isGeneralAlready: isCentre && (uncertainty ?? 0) >= radius };
  });
  const wideEnough = ({ size }: Cell): boolean => size * DEGREE_AT_LEAST >= (uncertainty ?? 0);
  const cell = cells.find(({ isGeneralAlready }) => isGeneralAlready) ?? cells.find(wideEnough) ?? cells.at(-1);
  if (cell === undefined) throw new Error('There are no cells to generalise a place to.');
  return cell;
}

/**
 * The middle of the cell that a coordinate lies in, in degrees; a cell begins at its western and southern edge. In whole tenths of a degree, so
 * that the middle of a middle is itself, to the last bit. The end of the range belongs to the last cell (latitude) or to the first one (longitude).
 */
function centreOf(degrees: number, tenths: number, most: 90 | 180): number {
  const cells = (2 * most * 10) / tenths;
  const index = Math.floor((degrees * 10) / tenths) + cells / 2;
  const inRange = most === 180 ? index % cells : Math.min(index, cells - 1);
  return ((inRange - cells / 2 + 0.5) * tenths) / 10;
}

/** A datum that strangers may read. */
function shownDatum(datum: string | null): string | null {
  return datum === null || DATUM.test(datum.trim()) ? datum : 'not recorded';
}

function inWords(size: number, uncertainty: number | null): string {
  const known = uncertainty === null ? '; how uncertain they were before is not recorded' : '';
  return `Coordinates are the centre of a cell of ${size} degree${size > 1 ? 's' : ''}, and their uncertainty takes in the whole cell${known}.`;
}
