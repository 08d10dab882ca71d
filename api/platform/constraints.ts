/** What a keeper is told when a rule of the database stands against a change, and the field of the request it concerns. */
export interface ConstraintMessage {
  readonly pointer: string;
  readonly detail: string;
}

const rule = (pointer: string, detail: string): ConstraintMessage => ({ pointer, detail });
const missing = (pointer: string, word: string): ConstraintMessage =>
  rule(pointer, `There is no ${word} with this id.`);
const taken = (word: string): ConstraintMessage =>
  rule('/code', `You already have ${word} with this code. Choose another code.`);
const bounds = (pointer: string): ConstraintMessage =>
  rule(pointer, 'The date must be given with the first and the last day that it may mean, in this order.');
const inside = 'Give a number that fits in the register: read the limits of this field.';
const order =
  'An animal cannot be its own ancestor: a parent must stand before the clutch, and the clutch before its young. Check the parents.';
const wrongRoles = rule('/roles', 'A role is registrar or administrator.');
const onlyOne = (word: string): ConstraintMessage => rule('', `There is one ${word}, and it is there already.`);

const species: Record<string, ConstraintMessage> = {
  species_name_unique: rule('/scientificName', 'This species is in the register already.'),
  species_name_length: rule('/scientificName', 'A scientific name has 3 to 120 characters.'),
  species_cites: rule('/citesAppendix', 'A CITES appendix is I, II or III.'),
  species_range_pkey: rule('/ranges', 'Give each trait once.'),
  species_range_species: missing('', 'species'),
  species_range_source_length: rule('/ranges', 'Say in 1 to 500 characters who says so, or "common practice".'),
  species_range_order: rule(
    '/ranges',
    'The values must grow from the least ever known over the usual ones to the greatest ever known, and none is below 0.',
  ),
  line_name_unique: rule('/name', 'This species has a line of this name already. Choose that one, or another name.'),
  line_name_length: rule('/name', 'A name has 1 to 120 characters.'),
  line_label_kind: rule('/labelKind', 'A label is of the kind locality, trade-name, cross or unlabelled.'),
  line_species: missing('/speciesId', 'species'),
  line_of_species: rule('/speciesId', 'The line is there already.'),
};

const sources: Record<string, ConstraintMessage> = {
  source_code_unique: taken('a source'),
  source_code_length: rule('/code', 'A code has 1 to 40 characters.'),
  source_kind: rule('/kind', 'A source is of the kind import, wild-collection, purchase or unknown.'),
  source_country: rule('/countryOfExport', 'A country is an ISO 3166-1 code of two capital letters, such as EC.'),
  source_base_kinship: rule('/baseKinship', 'A kinship is a number from 0 to 1.'),
  source_keeper: missing('/keeperId', 'keeper'),
  source_date_bounds: bounds('/date'),
};

const individuals: Record<string, ConstraintMessage> = {
  individual_code_unique: taken('an animal'),
  individual_code_length: rule('/code', 'A code has 1 to 40 characters.'),
  individual_number_unique: rule('/number', 'This registry number was given out already.'),
  individual_number_positive: rule('/number', 'A registry number is above 0.'),
  individual_at_tier: rule('', order),
  individual_tier_positive: rule('', order),
  individual_after_clutch: rule('/clutchId', order),
  individual_clutch_with_tier: rule('/clutchId', order),
  individual_clutch: missing('/clutchId', 'clutch'),
  individual_source: missing('/sourceId', 'source'),
  individual_species: missing('/speciesId', 'species'),
  individual_keeper: missing('/keeperId', 'keeper'),
  individual_line_of_species: rule('/lineId', 'The line is not there, or it is a line of another species.'),
  individual_one_origin: rule(
    '/sourceId',
    'An animal comes from a source or from a clutch, not from both. Clear the other one.',
  ),
  individual_sex: rule('/sex', 'A sex is male, female or unsexed.'),
  individual_sex_basis: rule('/sexBasis', 'A sex is known by looks, calling, eggs, courtship, genetic or other.'),
  individual_sex_fits_role: rule(
    '/sex',
    'The animal is recorded as a parent in the role of the other sex. Correct those clutches first.',
  ),
  individual_status: rule('/status', 'A status is alive, died, gone or unknown.'),
  individual_died_only_dead: rule(
    '/status',
    'An animal with a date of death must have the status died. Clear the date of death, or set the status.',
  ),
  individual_in_time: rule(
    '/outOfWater',
    'The dates are out of order: an animal hatches, then leaves the water, then dies.',
  ),
  individual_sexed_on_bounds: bounds('/sexedOn'),
  individual_hatched_bounds: bounds('/hatched'),
  individual_out_of_water_bounds: bounds('/outOfWater'),
  individual_died_bounds: bounds('/died'),
};

const clutches: Record<string, ConstraintMessage> = {
  clutch_code_unique: taken('a clutch'),
  clutch_code_length: rule('/code', 'A code has 1 to 40 characters.'),
  clutch_keeper: missing('/keeperId', 'keeper'),
  clutch_pairing: missing('/pairingId', 'pairing'),
  clutch_eggs: rule('/eggs', inside),
  clutch_fertile: rule('/fertile', 'No more eggs can be fertile than were laid.'),
  clutch_hatched: rule('/hatched', 'No more can hatch than eggs were laid or fertile.'),
  clutch_out_of_water: rule('/outOfWater', 'No more can leave the water than hatched.'),
  clutch_laid_bounds: bounds('/laid'),
  clutch_hatched_on_bounds: bounds('/hatchedOn'),
  clutch_hatched_after_laying: rule('/hatchedOn', 'Eggs cannot hatch before they were laid. Check both dates.'),
  clutch_hatched_on_of_hatched: rule(
    '/hatchedOn',
    'Where none hatched there is no day on which they did. Clear one of the two.',
  ),
  clutch_stage_known: rule('', 'A clutch is in the egg, in the water, out of it or ended.'),
  clutch_at_tier: rule('', order),
  clutch_tier_positive: rule('', order),
  clutch_loss_pkey: rule('/losses', 'Give each cause of loss once.'),
  clutch_loss_clutch: missing('', 'clutch'),
  clutch_loss_cause: rule('/losses', 'A loss has the cause infertile, mould, eaten, dried-out, deformed or unknown.'),
  clutch_loss_count: rule('/losses', 'A loss counts 1 to 10 000 eggs or tadpoles.'),
};

const parents: Record<string, ConstraintMessage> = {
  clutch_candidate_role: rule('/sires', 'A parent is a sire or a dam.'),
  clutch_candidate_probability: rule('/sires', 'A probability is above 0 and at most 1.'),
  clutch_candidate_once: rule('/sires', 'An animal stands twice on one side. Give its weight once.'),
  clutch_candidate_with_tier: rule('/sires', order),
  clutch_candidate_before_clutch: rule('/sires', order),
  clutch_candidate_clutch: missing('', 'clutch'),
  clutch_candidate_individual: missing('/sires', 'animal'),
  clutch_candidate_sum: rule('/sires', 'The probabilities of each side must sum to 1.'),
  clutch_candidate_one_side: rule('/dams', 'An animal stands among the sires and among the dams. Give pairs instead.'),
  clutch_candidate_sex: rule('/sires', 'A male cannot be a dam, nor a female a sire.'),
  clutch_lists_or_pairs: rule('/pairs', 'Give sires and dams, or pairs, not both.'),
  clutch_pair_probability: rule('/pairs', 'A probability is above 0 and at most 1.'),
  clutch_pair_once: rule('/pairs', 'A pair stands twice. Give its weight once.'),
  clutch_pair_in_order: rule('/pairs', 'An animal cannot be a pair with itself.'),
  clutch_pair_before_clutch: rule('/pairs', order),
  clutch_pair_clutch: missing('', 'clutch'),
  clutch_pair_a: missing('/pairs', 'animal'),
  clutch_pair_b: missing('/pairs', 'animal'),
  clutch_pair_sum: rule('/pairs', 'The probabilities of all pairs must sum to 1.'),
};

const housing: Record<string, ConstraintMessage> = {
  pairing_name_length: rule('/name', 'A name has 1 to 120 characters.'),
  pairing_keeper: missing('/keeperId', 'keeper'),
  pairing_member_pairing: missing('', 'pairing'),
  pairing_member_individual: missing('/individualId', 'animal'),
  pairing_member_in_order: rule('/left', 'An animal cannot leave before it joined. Check both dates.'),
  pairing_member_one_place: rule(
    '/joined',
    'The animal lives in another pairing at that time, or twice in this one. Say when it left there, or change when it joined here.',
  ),
  pairing_member_joined_bounds: bounds('/joined'),
  pairing_member_left_bounds: bounds('/left'),
};

const remarks: Record<string, ConstraintMessage> = {
  observation_kind: rule('/kind', 'A remark is of the kind note, measurement, health or behaviour.'),
  observation_svl: rule('/svlMm', 'A snout-vent length is above 0 and at most 500 mm.'),
  observation_mass: rule('/massG', 'A mass is above 0 and at most 5000 g.'),
  observation_keeper: missing('/keeperId', 'keeper'),
  observation_individual: missing('/individualId', 'animal'),
  observation_pairing: missing('/pairingId', 'pairing'),
  observation_clutch: missing('/clutchId', 'clutch'),
  observation_source: missing('/sourceId', 'source'),
  observation_of_one_thing: rule('/individualId', 'A remark is about exactly one animal, pairing, clutch or source.'),
  observation_says_something: rule('/text', 'A remark needs a text, a length or a mass.'),
  observation_observed_on_bounds: bounds('/observedOn'),
  confirmed_warning_reason_length: rule('/reason', 'A reason has 1 to 500 characters.'),
  confirmed_warning_individual: missing('', 'animal'),
  confirmed_warning_clutch: missing('', 'clutch'),
  confirmed_warning_keeper: missing('', 'keeper'),
  confirmed_warning_of_one_thing: rule('', 'A warning is that of one animal or one clutch.'),
  confirmed_warning_once: rule('', 'Somebody confirmed this warning at the same moment.'),
};

const house: Record<string, ConstraintMessage> = {
  club_only_one: onlyOne('club'),
  club_name_length: rule('/name', 'A name has 1 to 120 characters.'),
  keeper_name_unique: rule('/name', 'A keeper of this name is there already.'),
  keeper_region_length: rule('/region', 'A region has 1 to 80 characters.'),
  keeper_name_length: rule('/name', 'A name has 1 to 120 characters.'),
  keeper_roles: wrongRoles,
  access_token_keeper: missing('', 'keeper'),
  access_token_name_length: rule('/name', 'A name has 1 to 120 characters.'),
  access_token_scope: rule('/scope', 'A token is for read or for write.'),
  access_token_hash_unique: rule('', 'This token is there already.'),
  sign_in_link_kind: rule('/kind', 'A link is an invitation or a reset.'),
  sign_in_link_hash_unique: rule('', 'This link is there already.'),
  sign_in_link_keeper: missing('/keeperId', 'keeper'),
  sign_in_link_roles: wrongRoles,
  sign_in_link_note_length: rule('/note', 'A note has 1 to 120 characters.'),
  sign_in_link_made_by: missing('', 'keeper'),
  sign_in_link_for_somebody: rule('/keeperId', 'A link for a new password needs a keeper.'),
  lineage_revision_only_one: onlyOne('revision of the lineage'),
  lineage_change_kind: rule('', 'A change is of an individual, its origin, a clutch, a source, a line or everything.'),
  figures_progress_only_one: onlyOne('progress of the figures'),
  lineage_change_of_something: rule('', 'A change names its record.'),
  register_import_keeper: missing('', 'keeper'),
  idempotency_key_keeper: missing('', 'keeper'),
  idempotency_key_pkey: rule('/Idempotency-Key', 'This Idempotency-Key is in use. Ask again in a moment.'),
};

const visible = rule('/visibility', 'A record is seen by private, club or public.');

const shared: Record<string, ConstraintMessage> = {
  individual_visibility: visible,
  source_visibility: visible,
  observation_visibility: visible,
  species_import: missing('', 'import'),
  line_import: missing('', 'import'),
  source_import: missing('', 'import'),
  species_keeper: missing('/keeperId', 'keeper'),
  line_keeper: missing('/keeperId', 'keeper'),
  individual_merged_into: missing('/keptId', 'animal'),
  individual_not_merged_into_itself: rule('/duplicateId', 'A record cannot be merged into itself. Choose two.'),
  individual_merged_is_withdrawn: rule(
    '',
    'A record that was merged into another stands no more. Undo the merging first.',
  ),
  merge_kept: missing('/keptId', 'animal'),
  merge_duplicate: missing('/duplicateId', 'animal'),
  merge_keeper: missing('', 'keeper'),
  merge_reason_length: rule('/reason', 'A reason has 1 to 500 characters.'),
  journal_entry_keeper: missing('', 'keeper'),
  journal_entry_via: rule('', 'A change is made in a session, by a token or by the service.'),
  journal_entry_reverses: missing('', 'journal entry'),
  journal_unsealed_entry: missing('', 'journal entry'),
  journal_seal_entry: missing('', 'journal entry'),
  journal_seal_once: rule('', 'This entry has its place in the journal already.'),
};

const coordinates =
  'Coordinates are a latitude, a longitude and their datum together. Give "not recorded" as the datum where it is not known.';

const provenance: Record<string, ConstraintMessage> = {
  claim_keeper: missing('', 'keeper'),
  claim_source: missing('/sourceId', 'source'),
  claim_line: missing('/lineId', 'line'),
  claim_individual: missing('/individualId', 'animal'),
  claim_aspect: rule('/aspect', 'A claim names a locality or a trade-name.'),
  claim_value_length: rule('/value', 'A claimed label has 1 to 200 characters.'),
  claim_stated_by_length: rule('/statedBy', 'A name has 1 to 200 characters.'),
  claim_verbatim_locality_length: rule('/verbatimLocality', 'The words of a label have 1 to 2000 characters.'),
  claim_locality_length: rule('/locality', 'A place in words has 1 to 500 characters.'),
  claim_country: rule('/countryCode', 'A country is an ISO 3166-1 code of two capital letters, such as EC.'),
  claim_state_province_length: rule('/stateProvince', 'A province has 1 to 200 characters.'),
  claim_latitude: rule('/decimalLatitude', 'A latitude is a number from -90 to 90.'),
  claim_longitude: rule('/decimalLongitude', 'A longitude is a number from -180 to 180.'),
  claim_datum_length: rule('/geodeticDatum', 'A datum has 1 to 100 characters.'),
  claim_uncertainty: rule(
    '/coordinateUncertaintyM',
    'An uncertainty is above 0 m. Leave it out where it is not known.',
  ),
  claim_georeferenced_by_length: rule('/georeferencedBy', 'A name has 1 to 200 characters.'),
  claim_georeference_sources_length: rule('/georeferenceSources', 'Maps or papers have 1 to 500 characters.'),
  claim_about_one_thing: rule('/sourceId', 'A claim is about exactly one source, line or animal.'),
  claim_coordinates: rule('/decimalLatitude', coordinates),
  claim_uncertainty_of_coordinates: rule(
    '/coordinateUncertaintyM',
    'An uncertainty belongs to coordinates: give them too, or leave it out.',
  ),
  claim_stated_on_bounds: bounds('/statedOn'),
  claim_unique: rule('/value', 'This record has the same claim already. Bring the evidence to that one.'),
  claim_verbatim_kept: rule(
    '/verbatimLocality',
    'The words of a label are never altered. Withdraw the claim and enter a new one.',
  ),
  evidence_claim: missing('/claimId', 'claim'),
  evidence_keeper: missing('', 'keeper'),
  evidence_bearing: rule('/bearing', 'Evidence supports or contradicts a claim.'),
  evidence_kind: rule('/kind', 'Choose one of the kinds of evidence.'),
  evidence_names: rule('/names', 'Evidence names the claim, or only the country.'),
  evidence_reference_length: rule('/reference', 'A reference has 1 to 500 characters.'),
  evidence_issued_by_length: rule('/issuedBy', 'A name has 1 to 200 characters.'),
  evidence_dated_bounds: bounds('/dated'),
  evidence_repeats: missing('/repeatsId', 'evidence'),
  evidence_repeats_another: rule('/repeatsId', 'Evidence cannot repeat itself.'),
  evidence_file: missing('', 'file'),
  evidence_review: rule('/verdict', 'A review accepts or rejects.'),
  evidence_reviewer: missing('', 'keeper'),
  evidence_review_reason_length: rule('/reason', 'A reason has 1 to 500 characters.'),
  evidence_reviewed_whole: rule('', 'A review has a reviewer, a moment and a reason.'),
  evidence_not_reviewed_by_its_keeper: rule('', 'Nobody reviews their own evidence. Ask another registrar.'),
  stored_file_hash: rule('', 'A file is known by its SHA-256.'),
  stored_file_media_type: rule('', 'Choose a PDF, or a picture in JPEG, PNG or WebP.'),
  stored_file_bytes: rule('', 'This file is empty.'),
  stored_file_width: rule('', 'A picture is at least one pixel wide.'),
  stored_file_height: rule('', 'A picture is at least one pixel high.'),
  photograph_individual: missing('/individualId', 'animal'),
  photograph_keeper: missing('', 'keeper'),
  photograph_file: missing('', 'file'),
  photograph_view: rule('/view', 'A photograph shows the back, a side, the belly or something other.'),
  photograph_taken_on_bounds: bounds('/takenOn'),
  flag_acknowledgement_keeper: missing('', 'keeper'),
  flag_acknowledgement_individual: missing('/individualId', 'animal'),
  flag_acknowledgement_line: missing('/lineId', 'line'),
  flag_acknowledgement_reason_length: rule('/reason', 'A reason has 1 to 500 characters.'),
  flag_acknowledgement_of_one_thing: rule('/individualId', 'A flag is acknowledged on exactly one animal or line.'),
  flag_acknowledgement_unique: rule(
    '/code',
    'This flag is acknowledged already. Read by whom and why; withdraw that first to acknowledge it anew.',
  ),
};

/** What is signed stays as it was signed. */
const otherRegisters: Record<string, ConstraintMessage> = {
  other_register_keeper: missing('', 'keeper'),
  other_register_name_length: rule('/name', 'A name has 1 to 120 characters.'),
  other_register_address_length: rule('/address', 'An address has 1 to 300 characters.'),
  other_register_name_unique: rule('/name', 'Another register has this name here already. Choose another name.'),
  foreign_record_register: missing('', 'other register'),
  foreign_record_kind: rule('', 'What is recognised is an animal, a clutch or a source.'),
  foreign_record_key_length: rule('', 'What a record is recognised by has 1 to 64 characters.'),
  foreign_record_pkey: rule('', 'This record is recognised already.'),
};

const sheets: Record<string, ConstraintMessage> = {
  signing_key_unique: rule('/kid', 'This key is known already.'),
  signing_key_kid: rule('/kid', 'A key is known by its thumbprint.'),
  signing_key_x: rule('', 'A public key has 32 bytes.'),
  signing_key_reason_length: rule('/reason', 'A reason has 1 to 500 characters.'),
  signing_key_retired_whole: rule('/reason', 'A key that is retired has a moment and a reason.'),
  signing_key_time_of_use: rule('', 'A key cannot be retired before it was made.'),
  signing_key_kept: rule('', 'A key is never altered, and is retired once.'),
  provenance_sheet_number_unique: rule('', 'This number is given to another sheet.'),
  provenance_sheet_token_unique: rule('', 'This address is given to another sheet.'),
  provenance_sheet_keeper: missing('', 'keeper'),
  provenance_sheet_signing_key: missing('', 'key'),
  provenance_sheet_revoked_reason_length: rule('/reason', 'A reason has 1 to 500 characters.'),
  provenance_sheet_revoked_whole: rule('/reason', 'A sheet that is revoked has a moment and a reason.'),
  provenance_sheet_kept: rule('', 'A signed sheet is never altered. Revoke it, and make a new one.'),
  provenance_sheet_animal_pkey: rule('/animals', 'An animal stands twice on this sheet. Name it once.'),
  provenance_sheet_animal_sheet: missing('', 'sheet'),
  provenance_sheet_animal_individual: missing('/animals', 'animal'),
  provenance_sheet_animal_place: rule('/animals', 'Animals are counted from 1.'),
};

const selling: Record<string, ConstraintMessage> = {
  transfer_keeper: missing('', 'keeper'),
  transfer_to: missing('/to', 'keeper'),
  transfer_left_to_length: rule('/leftTo', 'Whoever took the animals is told in 1 to 200 characters.'),
  transfer_date_bounds: bounds('/date'),
  transfer_note_length: rule('/note', 'A note has 1 to 2000 characters.'),
  transfer_state: rule('', 'A transfer is offered, accepted, declined or withdrawn.'),
  transfer_reason_length: rule('/reason', 'A reason has 1 to 500 characters.'),
  transfer_settled_by: missing('', 'keeper'),
  transfer_to_another: rule('/to', 'Animals are offered to another keeper. Choose somebody else.'),
  transfer_left_to_outside: rule(
    '/leftTo',
    'Animals go to a keeper of the club, or out of the club. Name one of both.',
  ),
  transfer_departure_is_not_answered: rule('', 'Nobody has to answer for animals that left the club.'),
  transfer_accepted_on_a_date: rule('/date', 'Say on which date the animals changed hands.'),
  transfer_settled_whole: rule('', 'A transfer that was answered says by whom and when.'),
  transfer_at_state: rule('', 'This transfer is there already.'),
  transfer_in_order: rule('', 'This transfer was answered meanwhile. Look at it again.'),
  transfer_animal_pkey: rule('/animals', 'An animal stands twice in this transfer. Name it once.'),
  transfer_animal_individual: missing('/animals', 'animal'),
  transfer_animal_transfer: missing('', 'transfer'),
  transfer_animal_returned_bounds: bounds('/date'),
  transfer_animal_offered_unique: rule(
    '/animals',
    'An animal of these is on offer already. Withdraw that offer first, or leave the animal out.',
  ),
};

/** A kept plan stays as it was made. */
const plans: Record<string, ConstraintMessage> = {
  kept_plan_keeper: missing('', 'keeper'),
  kept_plan_line: missing('/lineId', 'line'),
  kept_plan_name_length: rule('/name', 'A name has 1 to 120 characters.'),
  kept_plan_visibility: rule('/visibility', 'A plan is seen by its keeper (private) or by the club.'),
  kept_plan_answer_plan: missing('', 'kept plan'),
  kept_plan_answer_kept: rule('', 'A kept plan is never altered. Make a new one.'),
  kept_plan_pair_plan: missing('', 'kept plan'),
  kept_plan_pair_pkey: rule('/pairs', 'Each pair of a plan stands at a place of its own.'),
  kept_plan_pair_place: rule('/pairs', 'Pairs are counted from 0.'),
  kept_plan_pair_male: missing('/pairs', 'animal'),
  kept_plan_pair_female: missing('/pairs', 'animal'),
  kept_plan_pair_state: rule('/state', 'A pair is proposed, accepted or declined.'),
  kept_plan_pair_pairing: missing('/pairs', 'pairing'),
  kept_plan_pair_reason_length: rule('/reason', 'A reason has 1 to 500 characters.'),
  kept_plan_pair_accepted: rule('/state', 'A pair is accepted when it became a pairing, and only then.'),
  kept_plan_pair_pairing_unique: rule('/pairs', 'This pairing came of another pair. Each pair becomes its own.'),
};

/** Every rule that the database holds, in words. A test compares the names with the schema. */
export const constraintMessages: Record<string, ConstraintMessage> = {
  ...house,
  ...species,
  ...sources,
  ...individuals,
  ...clutches,
  ...parents,
  ...housing,
  ...remarks,
  ...shared,
  ...provenance,
  ...sheets,
  ...selling,
  ...plans,
  ...otherRegisters,
};
