import { ClutchCandidate } from './clutches/clutch-candidate.entity.ts';
import { ClutchLoss } from './clutches/clutch-loss.entity.ts';
import { ClutchPair } from './clutches/clutch-pair.entity.ts';
import { Clutch } from './clutches/clutch.entity.ts';
import { Individual } from './individuals/individual.entity.ts';
import { Merge } from './merges/merge.entity.ts';
import { Line } from './lines/line.entity.ts';
import { Observation } from './observations/observation.entity.ts';
import { PairingMember } from './pairings/pairing-member.entity.ts';
import { Pairing } from './pairings/pairing.entity.ts';
import { Source } from './sources/source.entity.ts';
import { SpeciesRange } from './species/species-range.entity.ts';
import { Species } from './species/species.entity.ts';
import { ConfirmedWarning } from './warnings/confirmed-warning.entity.ts';

/** Every table of the register room. */
export const registerEntities = [
  Species,
  SpeciesRange,
  Line,
  Source,
  Individual,
  Pairing,
  PairingMember,
  Clutch,
  ClutchLoss,
  ClutchCandidate,
  ClutchPair,
  Observation,
  ConfirmedWarning,
  Merge,
];
