import { seen } from '../../people/visibility.ts';
import { seenPairing } from '../seen-records.ts';

/** The least and the most that a life-history range says, in whole days of its unit; the usual before the extreme. */
const least = (range: string): string =>
  `floor(coalesce(${range}.usual_least, ${range}.extreme_least, ${range}.usual_most, ${range}.extreme_most))::integer`;
const most = (range: string): string =>
  `ceil(coalesce(${range}.usual_most, ${range}.extreme_most, ${range}.usual_least, ${range}.extreme_least))::integer`;

/**
 * SQL for the species of a clutch, as far as whoever asks may know it: that of a possible dam, else sire, else of its young, else of the
 * animals of its pairing (clutch_candidate_once, clutch_pair_once, individual_clutch_index, pairing_member_pairing_index).
 */
const speciesOf = (c: string): string => `coalesce(
  (select i.species_id from clutch_candidate d join individual i on i.id = d.individual_id
    where d.clutch_id = ${c}.id and ${seen('individual', 'i')} order by d.role, d.probability desc, i.number limit 1),
  (select i.species_id from clutch_pair d join individual i on i.id in (d.a_id, d.b_id)
    where d.clutch_id = ${c}.id and ${seen('individual', 'i')} order by d.probability desc, i.number limit 1),
  (select y.species_id from individual y where y.clutch_id = ${c}.id and y.withdrawn_at is null and ${seen('individual', 'y')} order by y.number limit 1),
  (select i.species_id from pairing p join pairing_member m on m.pairing_id = p.id join individual i on i.id = m.individual_id
    where p.id = ${c}.pairing_id and ${seenPairing('p')} and ${seen('individual', 'i')} order by i.number limit 1))`;

/**
 * SQL of a join that says when a clutch `c` is expected to hatch, or to leave the water, by the profile of its species: the columns
 * event, since, opens, closes, counted_from, species_id and species of `w`; opens and closes are null where the profile or the dates do not say.
 * The water is counted from the day of hatching, else from that of a young of it, else from the laying.
 */
export const expectedWindow = (c: string): string => `
  left join lateral (
    select kin.species_id, s.scientific_name as species,
      case ${c}.stage when 'egg' then 'hatching' when 'water' then 'leaving-water' end as event,
      case when isfinite(at.opens) and isfinite(at.closes) then at.opens end as opens,
      case when isfinite(at.opens) and isfinite(at.closes) then at.closes end as closes,
      at.since, case when ${c}.stage = 'water' and birth.earliest is not null then 'hatching' else 'laying' end as counted_from
    from (select ${speciesOf(c)} as species_id) kin
      left join species s on s.id = kin.species_id
      left join species_range egg on egg.species_id = kin.species_id and egg.trait = 'laying-to-hatching'
      left join species_range water on water.species_id = kin.species_id and water.trait = 'hatching-to-leaving-water'
      cross join lateral (select coalesce(${c}.hatched_on_earliest, y.earliest) as earliest, coalesce(${c}.hatched_on_latest, y.latest) as latest
        from (select min(y.hatched_earliest) as earliest, min(y.hatched_latest) as latest from individual y
          where ${c}.stage = 'water' and ${c}.hatched_on is null and y.clutch_id = ${c}.id and y.withdrawn_at is null and ${seen('individual', 'y')}) y) birth
      cross join lateral (select
        case ${c}.stage when 'egg' then ${c}.laid_earliest when 'water' then coalesce(birth.earliest, ${c}.laid_earliest) end as since,
        case ${c}.stage when 'egg' then ${c}.laid_earliest + ${least('egg')}
          when 'water' then coalesce(birth.earliest, ${c}.laid_earliest + ${least('egg')}) + ${least('water')} end as opens,
        case ${c}.stage when 'egg' then ${c}.laid_latest + ${most('egg')}
          when 'water' then coalesce(birth.latest, ${c}.laid_latest + ${most('egg')}) + ${most('water')} end as closes) at
    where ${c}.stage in ('egg', 'water')) w on true`;

/** SQL for the expectation of `expectedWindow` as the view shows it, null where there is none. */
export const expectedColumn = `case when w.opens is not null then json_build_object('event', w.event, 'since', w.since::text, 'from', w.opens::text, 'to', w.closes::text,
  'countedFrom', w.counted_from, 'speciesId', w.species_id, 'species', w.species) end`;
