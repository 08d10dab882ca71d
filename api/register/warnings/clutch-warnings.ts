import { daysBetween, isCertainlyBefore } from '../../../shared/edtf.ts';
import type { ClutchFacts, ParentFacts, RangeFacts, Warning, WarningCode } from './facts.ts';
import { callParent } from './parent-words.ts';
import {
  amount,
  isCertainlyLonger,
  isCertainlyShorter,
  leastKnown,
  mostKnown,
  rangeInWords,
  spanBetween,
  spanInWords,
} from './spans.ts';
import { say, together } from '../../platform/say.ts';

type Check = (facts: ClutchFacts) => Warning[] | null;

const youngCodes = { dam: 'young-dam', sire: 'young-sire', either: 'young-parent' } as const;
const oldCodes = { dam: 'old-dam', sire: 'old-sire', either: 'old-parent' } as const;

/** Each looks at one thing; together they are the warnings of a clutch. */
export const clutchWarnings: readonly Check[] = [
  youngParents,
  oldParents,
  deadParents,
  manyEggs,
  lostAndHatched,
  recordedYoung,
  closeClutches,
  crossedParents,
  pairsOfOneSex,
];

function youngParents(facts: ClutchFacts): Warning[] | null {
  return byRole(facts.parents, youngCodes, ['laid', 'parents'], (parent) => {
    const age = spanBetween(parent.hatched, facts.laid, 'months');
    const { maturity } = parent.ranges;
    if (!age || !maturity || !isCertainlyShorter(age, maturity.usualLeast ?? maturity.extremeLeast)) return null;
    return say`laid when ${callParent(parent, facts.parents)} was ${spanInWords(age, 'months')} old; ${rangeFrom(maturity, 'months')}`;
  });
}

function oldParents(facts: ClutchFacts): Warning[] | null {
  return byRole(facts.parents, oldCodes, ['laid', 'parents'], (parent) => {
    const age = spanBetween(parent.hatched, facts.laid, 'years');
    const { lifespan } = parent.ranges;
    if (!age || !lifespan || !isCertainlyLonger(age, mostKnown(lifespan))) return null;
    return say`laid when ${callParent(parent, facts.parents)} was ${spanInWords(age, 'years')} old; they live ${rangeUpTo(lifespan)}`;
  });
}

function deadParents(facts: ClutchFacts): Warning[] | null {
  const { laid } = facts;
  if (!laid) return null;
  const said = facts.parents
    .filter((parent) => parent.died !== null && isCertainlyBefore(parent.died, laid))
    .map((parent) => say`${callParent(parent, facts.parents)} is recorded as dead before the clutch was laid`);
  return said.length === 0 ? null : [{ code: 'dead-parent', detail: sentence(said), fields: ['laid', 'parents'] }];
}

function manyEggs(facts: ClutchFacts): Warning[] | null {
  if (facts.eggs === null) return null;
  if (facts.eggs === 0)
    return [
      {
        code: 'no-eggs',
        detail: say`A clutch of no eggs. Leave the number out where nobody counted.`,
        fields: ['eggs'],
      },
    ];
  const range = rangeOfMother(facts, 'eggs-per-clutch');
  const most = range && mostKnown(range);
  if (!range || most === null || most === undefined || facts.eggs <= most) return null;
  return [{ code: 'many-eggs', detail: say`${facts.eggs} eggs; ${rangeInWords(range, 'eggs')}.`, fields: ['eggs'] }];
}

function lostAndHatched(facts: ClutchFacts): Warning[] | null {
  if (facts.eggs === null || facts.lost + (facts.hatched ?? 0) <= facts.eggs) return null;
  return [
    {
      code: 'more-lost-than-laid',
      detail:
        facts.hatched === null
          ? say`${facts.lost} lost, but ${amount(facts.eggs, 'eggs')} laid.`
          : say`${facts.lost} lost and ${facts.hatched} hatched, but ${amount(facts.eggs, 'eggs')} laid.`,
      fields: ['eggs', 'hatched', 'losses'],
    },
  ];
}

function recordedYoung(facts: ClutchFacts): Warning[] | null {
  const most = facts.hatched ?? facts.eggs;
  if (most === null || facts.young <= most) return null;
  const limit = facts.hatched === null ? say`${amount(most, 'eggs')} laid` : say`${most} hatched`;
  return [
    {
      code: 'more-young-than-eggs',
      detail: say`${facts.young} young stand in the register, but ${limit}.`,
      fields: ['eggs', 'hatched'],
    },
  ];
}

function closeClutches(facts: ClutchFacts): Warning[] | null {
  const { laid } = facts;
  const range = facts.parents.find((parent) => parent.role === 'dam')?.ranges['between-clutches'];
  const least = range ? leastKnown(range) : null;
  if (!laid || !range || least === null) return null;
  const said = facts.nearbyOfDam.flatMap((other) => {
    const [from, to] = isCertainlyBefore(other.laid, laid) ? [other.laid, laid] : [laid, other.laid];
    const days = daysBetween(from, to);
    return isCertainlyShorter(days, least)
      ? [
          from === laid
            ? say`laid ${spanInWords(days, 'days')} before the ${other.title} of the same dam`
            : say`laid ${spanInWords(days, 'days')} after the ${other.title} of the same dam`,
        ]
      : [];
  });
  return said.length === 0
    ? null
    : [
        {
          code: 'close-clutches',
          detail: say`${listed(said, 2)}; ${rangeInWords(range, 'days')}.`,
          fields: ['laid'],
        },
      ];
}

function crossedParents(facts: ClutchFacts): Warning[] | null {
  for (const [place, parent] of facts.parents.entries())
    for (const other of facts.parents.slice(place + 1)) {
      if (parent.role === other.role && parent.role !== 'either') continue;
      const difference = differenceBetween(parent, other);
      if (difference !== null)
        return [
          {
            code: 'cross',
            detail: together(
              [say`${callParent(parent, facts.parents)} and ${callParent(other, facts.parents)} ${difference}`],
              ([said = '']) => `${capital(said)}.`,
            ),
            fields: ['parents'],
          },
        ];
    }
  return null;
}

/** Happens when a group is sexed after its clutches were noted: such a pair had better go, so that the others weigh more. */
function pairsOfOneSex(facts: ClutchFacts): Warning[] | null {
  const said = (facts.pairsOfOneSex ?? []).map(
    ({ a, b, sex }) => say`the possible parents ${a} and ${b} are both recorded as ${sex}`,
  );
  return said.length === 0 ? null : [{ code: 'pair-of-one-sex', detail: sentence(said), fields: ['parents'] }];
}

function differenceBetween(a: ParentFacts, b: ParentFacts): string | null {
  if (a.speciesId === null || b.speciesId === null) return null;
  if (a.speciesId !== b.speciesId) return say`are of different species`;
  if (a.lineId === null || b.lineId === null || a.lineId === b.lineId) return null;
  return say`are of different lines, ${a.line ?? say`one`} and ${b.line ?? say`another`}`;
}

/** The range of whoever laid the eggs: a dam's, else any possible parent's. */
function rangeOfMother(facts: ClutchFacts, trait: 'eggs-per-clutch'): RangeFacts | undefined {
  const mother = facts.parents.find((parent) => parent.role === 'dam') ?? facts.parents[0];
  return mother?.ranges[trait];
}

function byRole(
  parents: readonly ParentFacts[],
  codes: Record<ParentFacts['role'], WarningCode>,
  fields: readonly string[],
  say: (parent: ParentFacts) => string | null,
): Warning[] | null {
  const warnings: Warning[] = [];
  for (const role of ['dam', 'sire', 'either'] as const) {
    const said = parents.filter((parent) => parent.role === role).flatMap((parent) => say(parent) ?? []);
    if (said.length > 0) warnings.push({ code: codes[role], detail: sentence(said), fields });
  }
  return warnings.length === 0 ? null : warnings;
}

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/** At most three things in one sentence, since a group has many candidates. */
const sentence = (said: readonly string[]): string => together([listed(said, 3)], ([text = '']) => `${text}.`);

function listed(said: readonly string[], most: number): string {
  const more = said.length > most ? [say`and ${said.length - most} more`] : [];
  return together([...said.slice(0, most), ...more], (parts) => capital(parts.join('; ')));
}

function rangeFrom(range: RangeFacts, unit: string): string {
  const usual = range.usualLeast === null ? null : say`usual is ${range.usualLeast} or more`;
  const extreme = range.extremeLeast === null ? null : say`the youngest known was ${amount(range.extremeLeast, unit)}`;
  return together(
    [usual, extreme].filter((part) => part !== null),
    (parts) => parts.join(', '),
  );
}

function rangeUpTo(range: RangeFacts): string {
  const most = mostKnown(range);
  return most === null ? say`less` : say`${amount(most, 'years')} at most`;
}
