/** Generated from the API by npm run client:types. */
export interface paths {
    "/api/health/live": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /** Whether the process runs */
        get: operations["liveHealth"];
        put?: never;
        post?: never;
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/health/ready": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /** Whether the service can answer: its database does */
        get: operations["readyHealth"];
        put?: never;
        post?: never;
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/v1/keepers": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /** The keepers of the club, by name; those who left too */
        get: operations["listKeepersPeople"];
        put?: never;
        post?: never;
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/v1/keepers/{id}": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /** One keeper */
        get: operations["getKeeperPeople"];
        put?: never;
        post?: never;
        delete?: never;
        options?: never;
        head?: never;
        /** Change one’s own name or region; for administrators also those and the roles of others */
        patch: operations["changeKeeperPeople"];
        trace?: never;
    };
    "/api/v1/keepers/{id}/departure": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        get?: never;
        put?: never;
        /**
         * Leave the club; for administrators also: note that somebody left
         * @description Ends every session, token and link of the keeper. The records stay, under the name.
         */
        post: operations["departKeeperPeople"];
        /** Take a keeper who left back in */
        delete: operations["takeKeeperBackPeople"];
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/v1/club": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /** The settings of the club */
        get: operations["getClubPeople"];
        put?: never;
        post?: never;
        delete?: never;
        options?: never;
        head?: never;
        /** Change the settings of the club */
        patch: operations["changeClubPeople"];
        trace?: never;
    };
    "/api/v1/session": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /** Who asks, in which club, and what they may do */
        get: operations["getSessionSession"];
        put?: never;
        /**
         * Sign in with name and passphrase
         * @description The answer sets the cookie of the session: HttpOnly, 7 days without use, 30 days at most.
         */
        post: operations["signInSession"];
        /** Sign out in this browser */
        delete: operations["signOutSession"];
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/v1/session/demo": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        get?: never;
        put?: never;
        /** Sign in as an invented keeper; in a demo club only */
        post: operations["signInToDemoSession"];
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/v1/sessions": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        get?: never;
        put?: never;
        post?: never;
        /** Sign out in every browser; tokens of programs stay */
        delete: operations["signOutEverywhereSession"];
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/v1/setup": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        get?: never;
        put?: never;
        /**
         * Name the club and its first administrator, who is signed in at once
         * @description Works once, with the code that the service prints in its terminal while nobody can administer it.
         */
        post: operations["setUpSession"];
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/v1/links": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /** Links that can still be used, the newest first */
        get: operations["listLinksLinks"];
        put?: never;
        /**
         * Make a link by which somebody joins the club, or sets a new passphrase
         * @description The secret is in this answer and stored nowhere; a repeat under the same Idempotency-Key gets 409. An invitation lasts 7 days, a reset 1 day; each works once.
         */
        post: operations["makeLinkLinks"];
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/v1/links/{link}": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /** What a link offers to whoever opens it */
        get: operations["lookAtLinkLinks"];
        put?: never;
        post?: never;
        /** Revoke a link */
        delete: operations["revokeLinkLinks"];
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/v1/links/{link}/use": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        get?: never;
        put?: never;
        /** Use a link: join the club or set a new passphrase, and be signed in */
        post: operations["useLinkLinks"];
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/v1/account/password": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        get?: never;
        /** Change one’s own passphrase; every other session of the keeper ends */
        put: operations["changePassphraseAccount"];
        post?: never;
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/v1/account/tokens": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /** One’s own tokens, the newest first */
        get: operations["listTokensAccount"];
        put?: never;
        /**
         * Make a token for a program
         * @description In a session only. The secret is in this answer and stored nowhere; a repeat under the same Idempotency-Key gets 409.
         */
        post: operations["makeTokenAccount"];
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/v1/account/tokens/{id}": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        get?: never;
        put?: never;
        post?: never;
        /** Revoke a token */
        delete: operations["revokeTokenAccount"];
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/metrics": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /**
         * Figures in the Prometheus text format
         * @description For administrators and for the bearer of METRICS_TOKEN. Open to anyone while that is not set and the service is reached from its own machine only.
         */
        get: operations["figuresMetrics"];
        put?: never;
        post?: never;
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/v1/journal": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /** The journal, newest first; with `record` the history of one record */
        get: operations["listJournalJournal"];
        put?: never;
        post?: never;
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/v1/journal/head": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /** Where the chain of the journal stands: the hash to keep */
        get: operations["getJournalHeadJournal"];
        put?: never;
        post?: never;
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/v1/journal/{id}": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /** One entry of the journal */
        get: operations["getJournalEntryJournal"];
        put?: never;
        post?: never;
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/v1/journal/{id}/reversal": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        get?: never;
        put?: never;
        /**
         * Undo the change that an entry tells of
         * @description Needs the permission for the change itself. The reversal is a change with an entry of its own, which can be reversed again. Refused with 409 where the record was changed since; `since` lists the later entries, newest first.
         */
        post: operations["reverseJournalEntryJournal"];
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/v1/species": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /** Species profiles, by scientific name */
        get: operations["listSpeciesSpecies"];
        put?: never;
        /** Add a species profile */
        post: operations["addSpeciesSpecies"];
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/v1/species/{id}": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /** One species profile */
        get: operations["getSpeciesSpecies"];
        put?: never;
        post?: never;
        delete?: never;
        options?: never;
        head?: never;
        /** Change a species profile */
        patch: operations["changeSpeciesSpecies"];
        trace?: never;
    };
    "/api/v1/species/{id}/withdrawal": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        get?: never;
        put?: never;
        /** Withdraw a species profile that no standing record needs */
        post: operations["withdrawSpeciesSpecies"];
        /** Restore a withdrawn species profile */
        delete: operations["restoreSpeciesSpecies"];
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/v1/lines": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /** Lines, by name */
        get: operations["listLinesLines"];
        put?: never;
        /** Add a line */
        post: operations["addLineLines"];
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/v1/lines/{id}": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /** One line */
        get: operations["getLineLines"];
        put?: never;
        post?: never;
        delete?: never;
        options?: never;
        head?: never;
        /** Change a line */
        patch: operations["changeLineLines"];
        trace?: never;
    };
    "/api/v1/lines/{id}/withdrawal": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        get?: never;
        put?: never;
        /** Withdraw a line that no standing record needs */
        post: operations["withdrawLineLines"];
        /** Restore a withdrawn line */
        delete: operations["restoreLineLines"];
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/v1/sources": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /** Sources, oldest first */
        get: operations["listSourcesSources"];
        put?: never;
        /** Add a source */
        post: operations["addSourceSources"];
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/v1/sources/{id}": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /** One source */
        get: operations["getSourceSources"];
        put?: never;
        post?: never;
        delete?: never;
        options?: never;
        head?: never;
        /** Change a source */
        patch: operations["changeSourceSources"];
        trace?: never;
    };
    "/api/v1/sources/{id}/withdrawal": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        get?: never;
        put?: never;
        /** Withdraw a source that no standing record needs */
        post: operations["withdrawSourceSources"];
        /** Restore a withdrawn source */
        delete: operations["restoreSourceSources"];
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/v1/individuals/changes": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        get?: never;
        put?: never;
        /**
         * Change several animals at once, all of them or none
         * @description Fields that each of them gets, where they go to live, and a remark on each, any of these or all; in one transaction. Fields are for animals of one’s own (a registrar: all) at the version that was read; a move is for pairings of one’s own; a remark for any animal that one may see. Animals that are so already are left alone. With `dryRun` it tells what would become of each animal, and why not, and writes nothing. Each animal has its own entry in the journal, and the first entry of the request, whose id the header Journal-Entry carries, undoes all of it.
         */
        post: operations["changeTogetherTogether"];
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/v1/individuals": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /** Animals */
        get: operations["listIndividualsIndividuals"];
        put?: never;
        /** Add an animal */
        post: operations["addIndividualIndividuals"];
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/v1/individuals/{id}": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /** One animal, whole */
        get: operations["getIndividualIndividuals"];
        put?: never;
        post?: never;
        delete?: never;
        options?: never;
        head?: never;
        /** Change an animal */
        patch: operations["changeIndividualIndividuals"];
        trace?: never;
    };
    "/api/v1/individuals/{id}/withdrawal": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        get?: never;
        put?: never;
        /** Withdraw an animal that is no parent of a standing clutch */
        post: operations["withdrawIndividualIndividuals"];
        /** Restore a withdrawn animal */
        delete: operations["restoreIndividualIndividuals"];
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/v1/pairings": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /** Pairings, by name */
        get: operations["listPairingsPairings"];
        put?: never;
        /** Add a pairing */
        post: operations["addPairingPairings"];
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/v1/pairings/{id}": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /** One pairing */
        get: operations["getPairingPairings"];
        put?: never;
        post?: never;
        delete?: never;
        options?: never;
        head?: never;
        /** Change a pairing */
        patch: operations["changePairingPairings"];
        trace?: never;
    };
    "/api/v1/pairings/{id}/parent-corrections": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /**
         * Clutches whose recorded parents the housing contradicts
         * @description Offers to correct the clutches that a corrected date of joining or leaving, a laying date or a sex touches. Nothing changes by itself: to take one, send its `housed` parents with PATCH /clutches/{id} and its version in If-Match. Parents that came from the housing follow it; those that the keeper narrowed or gave odds are offered only once one of them did not live there, or an animal that did is missing among several at equal odds without a reason. Clutches without a laying date are not compared.
         */
        get: operations["listParentCorrectionsPairings"];
        put?: never;
        post?: never;
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/v1/pairings/{id}/members": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        get?: never;
        put?: never;
        /** Let an animal join a pairing */
        post: operations["addPairingMemberPairings"];
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/v1/pairings/{id}/members/{memberId}": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        get?: never;
        put?: never;
        post?: never;
        /** Remove a stay that was entered by mistake */
        delete: operations["removePairingMemberPairings"];
        options?: never;
        head?: never;
        /** Say when an animal joined or left a pairing */
        patch: operations["changePairingMemberPairings"];
        trace?: never;
    };
    "/api/v1/pairings/{id}/withdrawal": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        get?: never;
        put?: never;
        /** Withdraw a pairing that no standing record needs */
        post: operations["withdrawPairingPairings"];
        /** Restore a withdrawn pairing */
        delete: operations["restorePairingPairings"];
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/v1/clutches": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /** Clutches, newest first */
        get: operations["listClutchesClutches"];
        put?: never;
        /** Add a clutch, with its young if there are any */
        post: operations["addClutchClutches"];
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/v1/clutches/{id}": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /** One clutch */
        get: operations["getClutchClutches"];
        put?: never;
        post?: never;
        delete?: never;
        options?: never;
        head?: never;
        /** Change a clutch */
        patch: operations["changeClutchClutches"];
        trace?: never;
    };
    "/api/v1/clutches/{id}/offspring": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        get?: never;
        put?: never;
        /** Raise young from a clutch */
        post: operations["raiseOffspringClutches"];
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/v1/clutches/{id}/withdrawal": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        get?: never;
        put?: never;
        /** Withdraw a clutch that no standing record needs */
        post: operations["withdrawClutchClutches"];
        /** Restore a withdrawn clutch */
        delete: operations["restoreClutchClutches"];
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/v1/observations": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /** Observations, newest first */
        get: operations["listObservationsObservations"];
        put?: never;
        /** Add an observation */
        post: operations["addObservationObservations"];
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/v1/observations/{id}": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /** One observation */
        get: operations["getObservationObservations"];
        put?: never;
        post?: never;
        delete?: never;
        options?: never;
        head?: never;
        /** Change an observation */
        patch: operations["changeObservationObservations"];
        trace?: never;
    };
    "/api/v1/observations/{id}/withdrawal": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        get?: never;
        put?: never;
        /** Withdraw an observation that no standing record needs */
        post: operations["withdrawObservationObservations"];
        /** Restore a withdrawn observation */
        delete: operations["restoreObservationObservations"];
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/v1/individuals/{id}/warnings/{code}/confirmation": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        get?: never;
        put?: never;
        /** Accept a warning of an animal, with a reason; it stands again once its figures change */
        post: operations["confirmIndividualWarningWarnings"];
        /** Take the confirmation of a warning of an animal back */
        delete: operations["unconfirmIndividualWarningWarnings"];
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/v1/clutches/{id}/warnings/{code}/confirmation": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        get?: never;
        put?: never;
        /** Accept a warning of a clutch, with a reason; it stands again once its figures change */
        post: operations["confirmClutchWarningWarnings"];
        /** Take the confirmation of a warning of a clutch back */
        delete: operations["unconfirmClutchWarningWarnings"];
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/v1/merges/comparison": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /** Two records that may be of one animal, side by side: what differs, what would move, what stands against it */
        get: operations["compareRecordsMerges"];
        put?: never;
        post?: never;
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/v1/merges": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        get?: never;
        put?: never;
        /**
         * Merge two records of one animal
         * @description All that names the duplicate moves to the kept record; the duplicate is withdrawn and keeps its registry number, by which the kept record is found. Checked again at that moment: 409 names a loop first, else what stands against it as `obstacles`.
         */
        post: operations["mergeRecordsMerges"];
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/v1/merges/{id}": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /** One merging */
        get: operations["getMergeMerges"];
        put?: never;
        post?: never;
        /**
         * Undo a merging
         * @description Both records are as they were, and what moved is back. 409 names as `changed` what was changed since, so that it cannot be put back exactly; later mergings of the same records are undone first.
         */
        delete: operations["undoMergeMerges"];
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/v1/claims": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /** Claims, in the order in which they were entered */
        get: operations["listClaimsClaims"];
        put?: never;
        /** Add a claim about a source, a line or an animal */
        post: operations["addClaimClaims"];
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/v1/claims/{id}": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /** One claim */
        get: operations["getClaimClaims"];
        put?: never;
        post?: never;
        delete?: never;
        options?: never;
        head?: never;
        /** Change a claim; the words of the label stay as they are */
        patch: operations["changeClaimClaims"];
        trace?: never;
    };
    "/api/v1/claims/{id}/withdrawal": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        get?: never;
        put?: never;
        /** Withdraw a claim; its evidence counts no longer */
        post: operations["withdrawClaimClaims"];
        /** Restore a withdrawn claim */
        delete: operations["restoreClaimClaims"];
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/v1/evidence": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /** Evidence, in the order in which it was brought */
        get: operations["listEvidenceEvidence"];
        put?: never;
        /** Bring evidence that bears on a claim; it waits for a review */
        post: operations["addEvidenceEvidence"];
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/v1/evidence/{id}": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /** One piece of evidence */
        get: operations["getEvidenceEvidence"];
        put?: never;
        post?: never;
        delete?: never;
        options?: never;
        head?: never;
        /** Change evidence that nobody has reviewed yet */
        patch: operations["changeEvidenceEvidence"];
        trace?: never;
    };
    "/api/v1/evidence/{id}/review": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        get?: never;
        put?: never;
        /** Accept or reject another keeper's evidence, with a reason */
        post: operations["reviewEvidenceEvidence"];
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/v1/evidence/{id}/withdrawal": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        get?: never;
        put?: never;
        /** Withdraw evidence; it counts no longer */
        post: operations["withdrawEvidenceEvidence"];
        /** Restore withdrawn evidence */
        delete: operations["restoreEvidenceEvidence"];
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/v1/evidence/{id}/file": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /**
         * The file of a piece of evidence
         * @description To members who may see its claim. A PDF is a download; a picture was made anew from its pixels.
         */
        get: operations["getEvidenceFileEvidenceFiles"];
        /**
         * Put a file to a piece of evidence that nobody has reviewed yet
         * @description The body is the file itself, or a form with the file as `file`: a PDF of at most 20 MB, or a picture (JPEG, PNG, WebP, AVIF) of at most 25 MB, if nothing else is set. What it is is told by its content. A PDF with a script, a form that sends, another file inside or a lock is refused; a picture is made anew from its pixels. Only the keeper who brought the evidence may.
         */
        put: operations["putEvidenceFileEvidenceFiles"];
        post?: never;
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/v1/photographs": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /** Photographs of animals, those taken last first */
        get: operations["listPhotographsPhotographs"];
        put?: never;
        /**
         * Add a photograph of an animal
         * @description A form with the picture as `file`: JPEG, PNG, WebP or AVIF by its content, at most 25 MB if nothing else is set, and 60 million pixels. It is decoded and made anew as a JPEG of at most 4096 pixels, upright, without its position or anything else that the file held. The keeper of the animal and registrars may add one.
         */
        post: operations["addPhotographPhotographs"];
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/v1/photographs/{id}": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /** What is known of one photograph */
        get: operations["getPhotographPhotographs"];
        put?: never;
        post?: never;
        delete?: never;
        options?: never;
        head?: never;
        /** Change what is said of a photograph; the picture stays */
        patch: operations["changePhotographPhotographs"];
        trace?: never;
    };
    "/api/v1/photographs/{id}/file": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /**
         * The picture of a photograph
         * @description Made anew from the pixels of what was sent, so that it tells no position. To whoever may see the animal. Its ETag never changes.
         */
        get: operations["getPicturePhotographs"];
        put?: never;
        post?: never;
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/v1/photographs/{id}/withdrawal": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        get?: never;
        put?: never;
        /** Withdraw a photograph; it is listed no more */
        post: operations["withdrawPhotographPhotographs"];
        /** Restore a withdrawn photograph */
        delete: operations["restorePhotographPhotographs"];
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/v1/places": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /**
         * Claimed places for a map
         * @description Standing claims of a place that has coordinates or at least a country, with how well each stands and how many founders it speaks of. Strangers see places generalised (Darwin Core dataGeneralizations), so that nobody is led to wild animals.
         */
        get: operations["findPlacesPlaces"];
        put?: never;
        post?: never;
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/v1/individuals/{id}/label-history": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /**
         * What an animal was called when it came, by whom, and every change since
         * @description The label of its source, the line at entry and each later change of it, changes of the name of its lines, claims, and verdicts on their evidence. At most 300 events, the oldest first. Strangers are told no names of people, no evidence, and of the journal what was public then.
         */
        get: operations["getLabelHistoryOfAnimalLabelHistory"];
        put?: never;
        post?: never;
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/v1/lines/{id}/label-history": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /**
         * What a line was called, and under which labels its founders came
         * @description The labels of the sources of its animals, its own changes of name, claims, and verdicts on their evidence. At most 300 events, the oldest first. Strangers are told no names of people, no evidence, and of the journal what was public then.
         */
        get: operations["getLabelHistoryOfLineLabelHistory"];
        put?: never;
        post?: never;
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/v1/individuals/{id}/occurrence": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /**
         * An animal and its claimed place in the terms of Darwin Core
         * @description Terms of http://rs.tdwg.org/dwc/terms/ (TDWG), as JSON-LD or as Simple Darwin Core in CSV; what is not known is left out. The place is that of the best standing claim of the animal itself or of its source, and none for an animal that was bred. Strangers see it generalised.
         */
        get: operations["getOccurrenceOccurrence"];
        put?: never;
        post?: never;
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/v1/acknowledgements": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /** Acknowledged flags, in the order in which they were acknowledged */
        get: operations["listAcknowledgementsAcknowledgements"];
        put?: never;
        /**
         * Acknowledge a flag of an animal or of a line, with a reason
         * @description Registrars only. The flag stays in every list with its severity; who acknowledged it, when and why is told beside it. The records that cause it now are remembered: where another one comes to cause it, that is told too (`otherCauses`). An animal’s counts for that animal everywhere, a line’s for the audit of the line. 422 where nothing carries the flag now, 409 where it is acknowledged already: withdraw that first to acknowledge it anew.
         */
        post: operations["addAcknowledgementAcknowledging"];
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/v1/acknowledgements/{id}": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /** One acknowledgement */
        get: operations["getAcknowledgementAcknowledgements"];
        put?: never;
        post?: never;
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/v1/acknowledgements/{id}/withdrawal": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        get?: never;
        put?: never;
        /** Withdraw an acknowledgement; the flag is told without it */
        post: operations["withdrawAcknowledgementAcknowledgements"];
        /**
         * Restore a withdrawn acknowledgement
         * @description Refused with 409 where the flag was acknowledged anew meanwhile.
         */
        delete: operations["restoreAcknowledgementAcknowledgements"];
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/v1/individuals/{id}/lineage": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /**
         * Inbreeding, depth, label and genome shares of one animal
         * @description Counts only what the register knows: read F together with the depth. Founders count as unrelated unless their source states a base kinship. A withdrawn animal answers too.
         */
        get: operations["getLineageIndividualLineage"];
        put?: never;
        post?: never;
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/v1/individuals/{id}/lineage/common-ancestors": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /**
         * Why F is what it is: the common ancestors that it arises through
         * @description Each with its part of F, the number of its loops and their length, by the paths of Wright (1922); weighted by the odds where parents are uncertain. The parts of all of them sum to F. Loops are counted, not listed, so that a pedigree with millions of them answers too.
         */
        get: operations["findCommonAncestorsIndividualLineage"];
        put?: never;
        post?: never;
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/v1/individuals/{id}/lineage/loops": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /**
         * Why F is what it is, step by step: its loops
         * @description The largest loops, each as the two paths up from the parents to where they meet (Wright 1922), weighted by the odds where parents are uncertain; by common ancestor, how many are left out and their part of F together. What is listed, what is left out and the common ancestors not named sum to F. The work does not grow with the number of loops.
         */
        get: operations["listLoopsIndividualLineage"];
        put?: never;
        post?: never;
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/v1/individuals/{id}/pedigree": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /**
         * The ancestors of one animal as a graph
         * @description Individuals, clutches and sources as nodes, each once, in the order of their ids; edges point down in time. At most 5 000 nodes and 20 000 edges: a chart that would be larger ends earlier and says `truncated`.
         */
        get: operations["getPedigreeIndividualLineage"];
        put?: never;
        post?: never;
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/v1/individuals/{id}/descendants": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /**
         * What descends from one animal, clutch by clutch
         * @description Its clutches and those of its young, generation by generation, with the expected genome shares of every young by standing. Clutches and animals that may not be seen are told as on the page of each parent: no such clutch at all, of such an animal only that it is there.
         */
        get: operations["getDescendantsIndividualLineage"];
        put?: never;
        post?: never;
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/v1/individuals/{id}/provenance": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /**
         * Where an animal comes from, as W3C PROV
         * @description PROV-JSON (W3C Member Submission of 24 April 2013) of the model PROV-DM (Recommendation of 30 April 2013). Entities are the animal, its ancestors, clutches and sources, claims and accepted evidence; activities are arrival, laying, hatching and entry into the register; agents are keepers and whoever papers name. Each candidate parent is a wasDerivedFrom with lk:probability, above 0, at most 1; evidence of a primary document is prov:PrimarySource, of a secondary one prov:Quotation. Private records are concealed:… and tell nothing. Strangers see no agents and no evidence, and places generalised.
         */
        get: operations["getProvenanceProv"];
        put?: never;
        post?: never;
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/v1/individuals/{id}/lineage/spread": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /**
         * Which inbreeding coefficients one animal can have, where parents among its ancestors are uncertain
         * @description The expected F may be a value that no young can have. Each assignment chooses one candidate pair for every uncertain clutch among the ancestors, for all its young together, and F is then exact. Up to 4096 assignments are gone through one by one, more are drawn by their probabilities. With `Accept: text/event-stream` the answer is a stream: events named `progress` with `done` and `total` (assignments), then one event `result` with the same object as the JSON answer, or one event `problem` with a problem document. Closing it ends the computation. At most eight streams a keeper.
         */
        get: operations["getSpreadInbreedingSpread"];
        put?: never;
        post?: never;
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/v1/individuals/{id}/lineage/what-if": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        get?: never;
        put?: never;
        /**
         * Figures of one animal under another base kinship of sources, and under other parents of clutches
         * @description Computed as if it were recorded, and refused as the register would refuse it; nothing is written. Weights of candidates are of any scale. Sources and clutches outside the ancestry are taken too: they may touch the mean kinship with its line. Without assumptions the answer tells the figures as recorded, and what can be assumed.
         */
        post: operations["askWhatIfWhatIf"];
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/v1/lineage/kinship": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        get?: never;
        put?: never;
        /**
         * How related some animals are to each other
         * @description Up to 500 animals; of up to 60 also what their young would be. Counts only what the register knows; 0 means that no common ancestor is recorded.
         */
        post: operations["findKinshipLineage"];
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/v1/lineage/forecast": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        get?: never;
        put?: never;
        /**
         * What young of a pairing not yet made would be
         * @description Inbreeding with its range over the possible pairs, label shares and flags. Any sire may pair with any dam, by their weights. Figures advise; the keeper decides.
         */
        post: operations["forecastLineage"];
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/v1/lineage/figures": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        get?: never;
        put?: never;
        /**
         * Inbreeding, standings and flags of a list of animals
         * @description Up to 200 animals, for lists that show figures beside each.
         */
        post: operations["listFiguresLineage"];
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/v1/lineage/set": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /**
         * Diversity, founders and inbreeding of the animals that filters choose
         * @description The filters are those of the list of animals; without any, all animals that may be seen. Founders count as unrelated unless their source says otherwise. Computed in a thread: some seconds for a million animals.
         */
        get: operations["measureSetLineageSet"];
        put?: never;
        /**
         * Diversity, founders and inbreeding of animals picked by hand
         * @description Up to 5000 animals. It changes nothing, and is POSTed only because it can be long.
         */
        post: operations["measurePickedLineageSet"];
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/v1/lines/{id}/audit": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /**
         * Audit of a line: flags, blood from outside, labels and their evidence, diversity over the years, and what to find out first
         * @description It tells of the members that whoever asks may see. Computed in a thread, under two seconds for a line of 100 000 animals; given up when the connection closes.
         */
        get: operations["getAuditLineAudit"];
        put?: never;
        post?: never;
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/v1/lines/{id}/audit.csv": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /**
         * Members of a line with their flags, for a spreadsheet
         * @description One row a member that whoever asks may see, in the order of their numbers. Shares from 0 to 1; a text that a spreadsheet would take for a formula has an apostrophe before it.
         */
        get: operations["getTableLineAudit"];
        put?: never;
        post?: never;
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/v1/lines/{id}/audit.pdf": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /**
         * Audit of a line as a PDF
         * @description The same as `audit`, in pages of A4 or Letter, tagged for screen readers. Long lists are cut, and say how many more there are. Written in a thread.
         */
        get: operations["getPaperLineAudit"];
        put?: never;
        post?: never;
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/v1/lines/{id}/over-time": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /**
         * Every animal and clutch of a line, to be drawn over time
         * @description Columns of equal length instead of a record for each. Of its members those that whoever asks may see, at most 20 000 (422 above), and all possible parents of their clutches; a private parent keeps its place alone. Compressed with gzip where Accept-Encoding takes it.
         */
        get: operations["getOverTimeLineOverTime"];
        put?: never;
        post?: never;
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/v1/sources/{id}/living": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /**
         * Living animals that came from a source or descend from it
         * @description Counts those that whoever asks may see. An animal with candidate parents counts where one of them descends from the source; `certain` tells those that do so whoever the parents were.
         */
        get: operations["getSourceLivingSourceLiving"];
        put?: never;
        post?: never;
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/v1/lineage/progress": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /**
         * Whether the stored figures follow every change, and how far a recomputation has come
         * @description With `Accept: text/event-stream` the answer is a stream of events named `progress`, one now and one at every change, each carrying the same object as JSON; it stays open until one side leaves. At most eight streams a keeper.
         */
        get: operations["tellProgressFiguresProgress"];
        put?: never;
        post?: never;
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/v1/match/at-risk": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /**
         * Which lines, sources and founders are about to be lost, and who carries the last of them
         * @description Told is what only few living animals that may breed carry anything of, and lines and sources whose last ones are of one sex; the most urgent first. A carrier is an animal whose expected share is above 0, so with uncertain parents it may turn out to be none: `least` tells. Private animals count, and are told as private. The figures advise; the animals' welfare and the keeper's eye decide.
         */
        get: operations["listAtRisk"];
        put?: never;
        post?: never;
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/v1/match/exchange": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        get?: never;
        put?: never;
        /**
         * What an exchange of animals between two keepers of a line does for both, and which ones would help both
         * @description Measures what both have of a line before and after. Every exchange of one animal for one is tried; told are those after which both are more diverse, the best first. Who may not breed is not proposed, and told with the reason. Other lines and disputed labels are taken only where `allow` asks for them. Nothing is written; it is POSTed only because it can be long. The figures advise; the animals' welfare and the keeper's eye decide.
         */
        post: operations["measureExchangeExchange"];
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/v1/match/group": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        get?: never;
        put?: never;
        /**
         * How well a group fits, whom to take out or add, and the best group of a size
         * @description These animals often live in groups, where nobody knows who breeds with whom: every male counts as likely as any other, every female too. It changes nothing, and is POSTed only because it can be long. The figures advise; the animals' welfare and the keeper's eye decide.
         */
        post: operations["lookGroups"];
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/v1/kept-plans": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /** Kept plans: your own and those shared with the club, the newest first */
        get: operations["listKeptPlansKeptPlans"];
        put?: never;
        /**
         * Make a plan for a line and keep it
         * @description The plan is made anew from the assumptions, so that nothing in it was sent by whoever keeps it. With `shown`, 409 where it comes out with other pairs by now.
         */
        post: operations["addKeptPlanKeptPlans"];
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/v1/kept-plans/{id}": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /**
         * One kept plan: as it was when it was made, what became of it, and what the register changed under it
         * @description What was told then is kept and never altered. `now` of each pair and `since` are computed against the register of this moment, as far as whoever asks may see it: F of the young (Malécot 1948) then and now, animals that died, moved or were paired, labels that are disputed, and whether the assumptions are still met. Animals that may not be seen stand as private-1 and so on, without their keeper.
         */
        get: operations["getKeptPlanKeptPlans"];
        put?: never;
        post?: never;
        delete?: never;
        options?: never;
        head?: never;
        /** Rename a kept plan, note something, share it with the club or keep it to yourself again */
        patch: operations["changeKeptPlanKeptPlans"];
        trace?: never;
    };
    "/api/v1/kept-plans/{id}/pairings": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        get?: never;
        put?: never;
        /**
         * Accept pairs of a kept plan: turn them into pairings, all of them or none
         * @description Held against the register of this very moment: 422 names each pair that cannot be made any more, and each that would cross lines, exceed the limit of F of the plan or use a disputed label, unless `allow` asks for that; then the pairing carries the warning in its notes. 409 where a pair is decided already, or an animal certainly lives elsewhere at that time. One undo takes all of it back.
         */
        post: operations["acceptPairsKeptPlans"];
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/v1/kept-plans/{id}/pairs": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        get?: never;
        put?: never;
        post?: never;
        delete?: never;
        options?: never;
        head?: never;
        /** Decline pairs of a kept plan, or put them back */
        patch: operations["decidePairsKeptPlans"];
        trace?: never;
    };
    "/api/v1/kept-plans/{id}/withdrawal": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        get?: never;
        put?: never;
        /** Withdraw a kept plan; pairings that came of it stay */
        post: operations["withdrawKeptPlanKeptPlans"];
        /** Restore a withdrawn plan */
        delete: operations["restoreKeptPlanKeptPlans"];
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/v1/individuals/{id}/mates": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /**
         * Who for this one: possible mates of an animal, ranked
         * @description Animals of the other sex in the same line that whoever asks may see, with what the young would be: F with its range, label, and what they would add to the diversity of the line. Who is left out is told with the reason. Other lines, unsexed animals and disputed labels are taken only where they are asked for, and say so. The figures advise; the animals' welfare and the keeper's eye decide.
         */
        get: operations["listMates"];
        put?: never;
        post?: never;
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/v1/lines/{id}/new-blood": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /**
         * Which animals of other keepers carry what a keeper’s part of a line lacks
         * @description Ranks living animals that may breed by what they would add to the gene diversity of what one keeper has of a line, themselves or by one young with the best partner there; of a whole line, by one young. Which founders are lacking is told beside it. Who is left out is told with the reason; other lines, unsexed animals and disputed labels are taken only where they are asked for, and say so. The figures advise; the animals' welfare and the keeper's eye decide.
         */
        get: operations["listNewBlood"];
        put?: never;
        post?: never;
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/v1/lines/{id}/plan": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        get?: never;
        put?: never;
        /**
         * Which pairings for a line: the best set of pairs under given conditions, with its reasons
         * @description Chooses the pairs that make Σ mean kinship of the parents + w · Σ kinship of the two as small as it can be (mean kinship: Ballou & Lacy 1995), by an integer linear programme (HiGHS, Huangfu & Hall 2018), proven or with the gap that is left. At most 40 000 possible pairs, such as 200 males and 200 females. Where there can be no plan, 422 says which condition stands against it (`condition`) and what would help. Other lines, F above the limit and disputed labels are taken only where `allow` asks for them, and carry warnings. Nothing is written; closing the connection ends the computation. The figures advise; the animals' welfare and the keeper's eye decide.
         */
        post: operations["makePlanPlan"];
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/v1/lines/{id}/plan-forecast": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        get?: never;
        put?: never;
        /**
         * Gene diversity, inbreeding and founder shares of the next generations under a plan, under the pairings of today, and at random
         * @description Gene dropping: each replicate draws the genes of the founders, with the base kinship of their sources, drops them through the recorded ancestry to the breeders, all young of a clutch by the same parents, and then through the matings of each course. Nothing is written. With `Accept: text/event-stream` the answer is a stream: events named `progress` with `done` and `total` (replicates), then one event `result` with the same object as the JSON answer, or one event `problem` with a problem document. Closing it ends the computation, as leaving the JSON answer does. At most eight streams a keeper. A question may cost at most some 50 seconds of computing, counted beforehand; over that the answer says how many replicates fit. An Idempotency-Key changes nothing. The figures advise; the animals' welfare and the keeper's eye decide.
         */
        post: operations["askForecastPlanForecast"];
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/v1/signing-keys": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /** The keys that provenance sheets are and were signed with, the newest first */
        get: operations["listSigningKeysSigningKeys"];
        put?: never;
        /**
         * Make a new key in place of the present one
         * @description The copy of the service that answers signs with it from now on, and so do others on the same folder. Sheets that the old key signed stay genuine. Refused with 409 where the key was set from outside.
         */
        post: operations["renewSigningKeySigningKeys"];
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/v1/signing-keys/{kid}/retirement": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        get?: never;
        put?: never;
        /**
         * Retire a key: one whose private part was lost, stolen or replaced
         * @description Nothing is signed with it any more, and what claims to have been signed with it later is not genuine. A copy of the service whose key is retired makes itself a new one, unless its key was set from outside.
         */
        post: operations["retireSigningKeySigningKeys"];
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/.well-known/jwks.json": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /**
         * The public keys that provenance sheets are checked with
         * @description Without an account, from any page, and kept by caches for five minutes. A set of JSON web keys (RFC 7517).
         */
        get: operations["getPublishedKeysPublishedKeys"];
        put?: never;
        post?: never;
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/v1/provenance-sheets": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /**
         * Provenance sheets, the newest first
         * @description One’s own, those of animals that one keeps now, and to registrars all.
         */
        get: operations["listSheetsSheets"];
        put?: never;
        /**
         * Make and sign a provenance sheet of one’s own animals
         * @description It says what the register knows at this moment: identity, label with its standing, sources, parents and four generations of ancestors, inbreeding with depth and completeness. What every member may see of ancestors stands on it, without codes, keepers, notes and exact places; private records are there by their place alone. It replaces older sheets of the same animals. What is signed is never changed or undone: it can be revoked.
         */
        post: operations["makeSheetSheets"];
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/v1/provenance-sheets/{id}": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /** One provenance sheet */
        get: operations["getSheetSheets"];
        put?: never;
        post?: never;
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/v1/provenance-sheets/{id}/file": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /**
         * The signed file of a sheet, byte for byte as it was signed
         * @description A flattened JWS (RFC 7515, 7.2.2) in canonical form (RFC 8785), signed with Ed25519 (RFC 8037), of which the payload stands beside the signature as `sheet`: the payload is the canonical text of that. `npm run sheet:verify` checks it without a server.
         */
        get: operations["getSheetFileSheets"];
        put?: never;
        post?: never;
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/v1/provenance-sheets/{id}/paper": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /**
         * A sheet on paper
         * @description What the signed file says, as a PDF: A4, tagged for screen readers, fonts embedded, ancestors drawn, with the QR code of the public page where the register has an address (PUBLIC_URL).
         */
        get: operations["getSheetPaperSheets"];
        put?: never;
        post?: never;
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/v1/provenance-sheets/{id}/revocation": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        get?: never;
        put?: never;
        /**
         * Revoke a provenance sheet, for good
         * @description Its public page says so, and why, and shows nothing else of it any more. A file that was handed out stays with whoever has it.
         */
        post: operations["revokeSheetSheets"];
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/v1/sheets/verification": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        get?: never;
        put?: never;
        /**
         * What a sheet file is: genuine, changed, of another register, revoked
         * @description Anybody may ask, of any file up to 1 MB; it is looked at and kept nowhere. Send its very bytes as application/jose+json or application/octet-stream, since a file that was read and written anew is another one.
         */
        post: operations["verifySheetFilePublicSheets"];
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/v1/sheets/{token}": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /**
         * A provenance sheet by its public address: is it genuine, does it still stand, what says the register today
         * @description What became private since it was issued is not told, and neither is any difference that would tell of it. May be kept for a minute (ETag).
         */
        get: operations["getPublicSheetPublicSheets"];
        put?: never;
        post?: never;
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/v1/sheets/{token}/file": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /** The signed file of a sheet by its public address */
        get: operations["getPublicSheetFilePublicSheets"];
        put?: never;
        post?: never;
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/v1/sheets/{token}/paper": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /** A sheet on paper by its public address: what its signed file says, as a PDF */
        get: operations["getPublicSheetPaperPublicSheets"];
        put?: never;
        post?: never;
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/v1/sheets/{token}/photographs/{sha256}": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /** A photograph that stands on a sheet */
        get: operations["getPublicPhotographPublicSheets"];
        put?: never;
        post?: never;
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/v1/transfers": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /**
         * Transfers, newest first
         * @description An offer is seen by its two keepers and registrars; once animals changed hands or left, by every member who may see one of them. Who took animals out of the club, notes and reasons are told to the two (registrars) alone.
         */
        get: operations["listTransfersTransfers"];
        put?: never;
        /**
         * Offer animals to another keeper, or note that they left the club
         * @description Offered animals stay with the giver until the other keeper accepts; meanwhile that keeper sees their records, private ones too. An animal is in one open offer at most. Animals that left the club are gone from then on: their record stays, with their keeper, and their stays in pairings end on the date. A registrar can do it for the keeper of the animals.
         */
        post: operations["addTransferTransfers"];
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/v1/transfers/{id}": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /** One transfer with its animals */
        get: operations["getTransferTransfers"];
        put?: never;
        post?: never;
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/v1/transfers/{id}/acceptance": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        get?: never;
        put?: never;
        /**
         * Take the animals of an offer
         * @description The records themselves pass to the receiver, all or none, with everything that is known of them. Stays in pairings of other keepers end on the date. The giver still sees the animals, also if the receiver makes them private. A registrar can answer for the receiver, but not an offer of their own. 409 says what happened meanwhile (`current` is the transfer as it is now), what stands against it (`changed`), or which codes are taken (`errors`).
         */
        post: operations["acceptTransferTransfers"];
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/v1/transfers/{id}/refusal": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        get?: never;
        put?: never;
        /** Decline an offer; nothing changes hands */
        post: operations["declineTransferTransfers"];
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/v1/transfers/{id}/withdrawal": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        get?: never;
        put?: never;
        /**
         * Take an open offer back, or put animals back that had not left the club
         * @description A departure is put back as it was: the animals live with their keeper, and their stays go on; what was corrected meanwhile stays. Refused with 409 where an animal came back, died or was withdrawn since, or a stay was changed (`changed` names them).
         */
        post: operations["withdrawTransferTransfers"];
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/v1/transfers/{id}/returns": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        get?: never;
        put?: never;
        /**
         * Note that animals came back which had left the club
         * @description They live with the keeper of their record again; that they were away stays on record.
         */
        post: operations["returnAnimalsTransfers"];
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/v1/today": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /**
         * What is due: clutches, animals to sex, answers, reviews, warnings
         * @description Days are reckoned from the profiles of the species: the usual range, else the known one. What is more than 60 days late is only counted. Clutches whose dates leave more than 31 days open are not expected on any day.
         */
        get: operations["getTodayToday"];
        put?: never;
        post?: never;
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/v1/imports": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /** Imports of the past, newest first, but for those that made something private of another keeper */
        get: operations["listImportsImports"];
        put?: never;
        /**
         * Take a register sheet into the register, whole or not at all
         * @description The body is a CSV file in UTF-8, divided by comma, semicolon or tab, at most 100 MB and 1 000 000 animals. A refused sheet is told every problem with row, column and remedy (the first 1000, and their number as `problemCount`); nothing of it is stored.
         */
        post: operations["importSheetImports"];
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/v1/imports/{id}": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /** One import of the past, and how much of it still stands */
        get: operations["getImportImports"];
        put?: never;
        post?: never;
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/v1/imports/{id}/withdrawal": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        get?: never;
        put?: never;
        /**
         * Undo an import: withdraw everything that it made and that still stands
         * @description All of it or nothing, and only while no standing record from outside needs one that the import made: young, clutches, animals of its lines, stays in pairings, remarks, mergings. Else 409 names the first twenty as `dependants`, with their number as `total`, private records of other keepers among them as `privateCount`. The sheet can then be taken again. Its keeper and registrars may do it.
         */
        post: operations["undoImportImports"];
        /**
         * Restore an import that was undone, as a whole
         * @description 409 names as `taken` the records that have codes or names of it meanwhile, or as `dependants` the withdrawn records that it needs.
         */
        delete: operations["restoreImportImports"];
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/v1/exports/register-sheet": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /**
         * A register sheet of animals, for a spreadsheet or another register
         * @description CSV in UTF-8 with commas, in the form that `POST /imports` takes: one row an animal in the order of their numbers, at most 50000. Only what whoever asks may see: a parent that may not be seen is "?", a source that may not be seen is left out. Codes are made unique in the sheet, by the registry number where they are not. A text that a spreadsheet would take for a formula has an apostrophe before it.
         */
        get: operations["getRegisterSheetRegisterSheet"];
        put?: never;
        post?: never;
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/v1/foreign-sheets": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        get?: never;
        put?: never;
        /**
         * Take in the animals of a provenance sheet that another register signed, with their ancestors
         * @description The signature is checked with the keys of the registers that registrars here vouched for. Animals that came in by an earlier sheet are recognised by their number there, clutches and sources by what is told of them; what is known stays as it is. The rest is written as one import of the acting keeper, each record noting whence it came. Claims come in as stated by the other register, with the sheet as a paper that waits for a review: nothing is documented here because it was there. Undo it as any import.
         */
        post: operations["takeForeignSheetForeignSheets"];
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/v1/other-registers": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /** Registers of other clubs whose sheets are, or were, believed here */
        get: operations["listOtherRegistersOtherRegisters"];
        put?: never;
        /**
         * Believe the sheets of another register, by its keys
         * @description For registrars. The service fetches nothing: the file of keys is handed in, and whoever hands it in has compared the names of the keys with somebody there.
         */
        post: operations["addOtherRegisterOtherRegisters"];
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/v1/other-registers/{id}": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /** One register of another club */
        get: operations["getOtherRegisterOtherRegisters"];
        put?: never;
        post?: never;
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/v1/other-registers/{id}/keys": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        get?: never;
        put?: never;
        /** Add keys that another register took up since */
        post: operations["addKeysOfOtherRegisterOtherRegisters"];
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/v1/other-registers/{id}/withdrawal": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        get?: never;
        put?: never;
        /** Believe the sheets of another register no more; what came in stays */
        post: operations["withdrawOtherRegisterOtherRegisters"];
        /** Believe the sheets of another register again */
        delete: operations["restoreOtherRegisterOtherRegisters"];
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
}
export type webhooks = Record<string, never>;
export interface components {
    schemas: {
        ProblemErrorView: {
            /** @description JSON pointer of the field. */
            pointer?: string;
            /** @description Row of a sheet; its header is row 1. */
            row?: number;
            /** @description Column of a sheet, as its header names it. */
            column?: string;
            /** @description What is wrong and what to do about it. */
            detail: string;
        };
        ProblemView: {
            /** @description Address that names the kind of problem: /api/problems/<slug>. */
            type: string;
            /** @description The kind of problem in words. */
            title: string;
            /** @description The HTTP status. */
            status: number;
            /** @description What happened here, and what to do about it. */
            detail: string;
            /** @description The address that was asked. */
            instance: string;
            /** @description Each wrong field. */
            errors?: components["schemas"]["ProblemErrorView"][];
        };
        MemberView: {
            /**
             * Format: uuid
             * @description Id of the keeper.
             */
            id: string;
            /** @description Name of the keeper, 1 to 120 characters. */
            name: string;
            /** @description Grows with every change of name, region, roles or membership. */
            version: number;
            /** @description Where the keeper lives, roughly; null: not said. */
            region: string | null;
            /** @description What the keeper may do besides keeping animals. */
            roles: ("registrar" | "administrator")[];
            /**
             * Format: date-time
             * @description When the keeper came into this register.
             */
            joinedAt: string;
            /**
             * Format: date-time
             * @description When the keeper left the club; null: is in it.
             */
            leftAt: string | null;
        };
        KeeperChangeRequest: {
            /** @description Name, by which the keeper signs in. */
            name?: string;
            /**
             * @description Where the keeper lives, as roughly as they like members to know; null: not said.
             * @example Upper valley
             */
            region?: string | null;
            /** @description All that the keeper may do besides keeping animals; only an administrator changes it. */
            roles?: ("registrar" | "administrator")[];
        };
        ClubView: {
            /** @description Grows with every change of the settings. */
            version: number;
            /** @description Name of the club, 1 to 120 characters. */
            name: string;
            /** @description Whether every record is invented, for looking around. */
            demo: boolean;
            /** @description Whether anyone may read what is marked as public, without signing in. */
            publicReading: boolean;
        };
        ClubChangeRequest: {
            /** @description Name of the club. */
            name?: string;
            /** @description Whether anyone may read what is marked as public, without signing in. */
            publicReading?: boolean;
        };
        SessionClubView: {
            /** @description Name of the club, 1 to 120 characters. */
            name: string;
            /** @description Whether every record is invented, for looking around. */
            demo: boolean;
            /** @description Whether anyone may read what is marked as public. */
            publicReading: boolean;
        };
        SessionKeeperView: {
            /**
             * Format: uuid
             * @description Id of the keeper.
             */
            id: string;
            /** @description Name of the keeper. */
            name: string;
            /** @description What the keeper may do besides keeping animals. */
            roles: ("registrar" | "administrator")[];
        };
        PermissionConditionView: {
            /**
             * Format: uuid
             * @description Records of this keeper.
             */
            keeperId: string;
        };
        PermissionView: {
            /** @description What may be done. */
            action: string[];
            /** @description To which kinds of record. */
            subject: string[];
            /** @description Only to records whose fields are these; left out: to all. */
            conditions?: components["schemas"]["PermissionConditionView"];
        };
        FileLimitsView: {
            /**
             * @description Most bytes of a document (PDF).
             * @example 20000000
             */
            documentBytes: number;
            /**
             * @description Most bytes of a picture, as it comes from the camera.
             * @example 25000000
             */
            pictureBytes: number;
        };
        SessionView: {
            /**
             * @description setup: the register wants its first administrator; signed-out: nobody is signed in; signed-in.
             * @enum {string}
             */
            state: "setup" | "signed-out" | "signed-in";
            /** @description The club; null before it was set up. */
            club: components["schemas"]["SessionClubView"] | null;
            /** @description Who is signed in. */
            keeper: components["schemas"]["SessionKeeperView"] | null;
            /** @description What whoever asks may do. */
            permissions: components["schemas"]["PermissionView"][];
            /** @description The invented keepers of a demo club, for signing in with one click; empty in every other club. */
            demoKeepers: components["schemas"]["SessionKeeperView"][];
            /** @description How large files may be that are sent. */
            fileLimits: components["schemas"]["FileLimitsView"];
            /**
             * @description The address under which members reach the register, for what is printed; null where none was set (PUBLIC_URL).
             * @example https://register.example.org
             */
            address: string | null;
        };
        SignInRequest: {
            /** @description Name of the keeper, in capitals or not. */
            name: string;
            /**
             * Format: password
             * @description The passphrase.
             */
            password: string;
        };
        DemoSignInRequest: {
            /**
             * Format: uuid
             * @description Id of one of the invented keepers.
             */
            keeperId: string;
        };
        SetupRequest: {
            /** @description The code that the service printed in its terminal when it started. */
            code: string;
            /** @description Name of the club, 1 to 120 characters. */
            clubName: string;
            /** @description Name of the first administrator, 1 to 120 characters. */
            name: string;
            /**
             * Format: password
             * @description The passphrase of the first administrator, 8 to 200 characters.
             */
            password: string;
        };
        NewLinkRequest: {
            /**
             * @description invitation: for a new member; reset: for a new passphrase of a member.
             * @enum {string}
             */
            kind: "invitation" | "reset";
            /**
             * Format: uuid
             * @description Whose passphrase; for a reset only.
             */
            keeperId?: string | null;
            /** @description What the new member may do besides keeping animals; for an invitation only. */
            roles?: ("registrar" | "administrator")[];
            /** @description For whom it is, to know it again in the list. */
            note?: string | null;
        };
        KeeperView: {
            /**
             * Format: uuid
             * @description Id of the keeper.
             */
            id: string;
            /** @description Name of the keeper, 1 to 120 characters. */
            name: string;
        };
        NewLinkView: {
            /**
             * Format: uuid
             * @description Id of the link.
             */
            id: string;
            /**
             * @description invitation: for a new member; reset: for a new passphrase of a member.
             * @enum {string}
             */
            kind: "invitation" | "reset";
            /** @description Whose passphrase it sets; null for an invitation. */
            keeper: components["schemas"]["KeeperView"] | null;
            /** @description What the new member may do besides keeping animals. */
            roles: ("registrar" | "administrator")[];
            /** @description For whom it is. */
            note: string | null;
            /** @description The administrator who made it. */
            madeBy: components["schemas"]["KeeperView"];
            /**
             * Format: date-time
             * @description When it was made.
             */
            createdAt: string;
            /**
             * Format: date-time
             * @description Until when it can be used.
             */
            expiresAt: string;
            /** @description The address to hand over, with the secret: shown this once. A path of this service, or a whole address where PUBLIC_URL is set. */
            path: string;
        };
        LinkView: {
            /**
             * Format: uuid
             * @description Id of the link.
             */
            id: string;
            /**
             * @description invitation: for a new member; reset: for a new passphrase of a member.
             * @enum {string}
             */
            kind: "invitation" | "reset";
            /** @description Whose passphrase it sets; null for an invitation. */
            keeper: components["schemas"]["KeeperView"] | null;
            /** @description What the new member may do besides keeping animals. */
            roles: ("registrar" | "administrator")[];
            /** @description For whom it is. */
            note: string | null;
            /** @description The administrator who made it. */
            madeBy: components["schemas"]["KeeperView"];
            /**
             * Format: date-time
             * @description When it was made.
             */
            createdAt: string;
            /**
             * Format: date-time
             * @description Until when it can be used.
             */
            expiresAt: string;
        };
        LinkOfferView: {
            /**
             * @description invitation: to join the club; reset: to set a new passphrase.
             * @enum {string}
             */
            kind: "invitation" | "reset";
            /** @description Name of the club. */
            club: string;
            /** @description Whose passphrase it sets; null for an invitation. */
            name: string | null;
            /**
             * Format: date-time
             * @description Until when it can be used.
             */
            expiresAt: string;
        };
        LinkUseRequest: {
            /** @description Name of the new member; for an invitation only. */
            name?: string;
            /**
             * Format: password
             * @description The new passphrase, 8 to 200 characters.
             */
            password: string;
        };
        PassphraseChangeRequest: {
            /**
             * Format: password
             * @description The present passphrase.
             */
            current: string;
            /**
             * Format: password
             * @description The new passphrase, 8 to 200 characters.
             */
            next: string;
        };
        NewTokenRequest: {
            /** @description What it is for, to know it again in the list. */
            name: string;
            /**
             * @description read: for reading only; write: for all that the keeper may do.
             * @enum {string}
             */
            scope: "read" | "write";
            /**
             * Format: date-time
             * @description When it ends; null or left out: when it is revoked.
             * @example 2026-03-01T12:00:00Z
             */
            expiresAt?: string | null;
        };
        NewTokenView: {
            /**
             * Format: uuid
             * @description Id of the token.
             */
            id: string;
            /** @description What it is for. */
            name: string;
            /**
             * @description read: for reading only; write: for all that the keeper may do.
             * @enum {string}
             */
            scope: "read" | "write";
            /**
             * Format: date-time
             * @description When it was made.
             */
            createdAt: string;
            /**
             * Format: date-time
             * @description When it ends; null: when it is revoked.
             */
            expiresAt: string | null;
            /**
             * Format: date-time
             * @description When it was last used, to the minute; null: never.
             */
            lastUsedAt: string | null;
            /** @description The secret, for the header Authorization: Bearer; shown this once. It begins with lk_. */
            token: string;
        };
        TokenView: {
            /**
             * Format: uuid
             * @description Id of the token.
             */
            id: string;
            /** @description What it is for. */
            name: string;
            /**
             * @description read: for reading only; write: for all that the keeper may do.
             * @enum {string}
             */
            scope: "read" | "write";
            /**
             * Format: date-time
             * @description When it was made.
             */
            createdAt: string;
            /**
             * Format: date-time
             * @description When it ends; null: when it is revoked.
             */
            expiresAt: string | null;
            /**
             * Format: date-time
             * @description When it was last used, to the minute; null: never.
             */
            lastUsedAt: string | null;
        };
        JournalRecordView: {
            /** @description Kind of record: individual, clutch, pairing, source, line, species, observation, import, keeper ... */
            kind: string;
            /**
             * Format: uuid
             * @description Id of the record.
             */
            id: string;
            /** @description What people call it. */
            title: string;
        };
        JournalChangeView: {
            /**
             * @description Name of the field, as the API calls it; of another record without "Id".
             * @example hatched
             */
            field: string;
            /** @description What it was; null where there was nothing. */
            before: string | null;
            /** @description What it became; null where there is nothing. */
            after: string | null;
        };
        JournalSealView: {
            /** @description Place in the chain, from 1. */
            sequence: number;
            /** @description SHA-256 over this entry and the hash before it, hexadecimal. */
            hash: string;
        };
        JournalEntryView: {
            /**
             * Format: uuid
             * @description Id of the entry.
             */
            id: string;
            /**
             * Format: date-time
             * @description When, RFC 3339 in UTC.
             */
            at: string;
            /** @description Who acted; null where it was the service itself. */
            keeper: components["schemas"]["KeeperView"] | null;
            /**
             * @description By what: a session of the browser, a token of a program, or the service itself.
             * @enum {string}
             */
            via: "session" | "token" | "service";
            /**
             * @description What was done.
             * @enum {string}
             */
            action: "added" | "changed" | "withdrawn" | "restored" | "raised" | "raising-undone" | "raising-restored" | "imported" | "import-undone" | "import-restored" | "reviewed" | "changed-together" | "together-undone" | "together-restored" | "merged" | "unmerged" | "confirmed" | "unconfirmed" | "offered" | "offer-withdrawn" | "declined" | "accepted" | "acceptance-undone" | "departed" | "departure-withdrawn" | "came-back" | "return-undone" | "paired" | "pairing-undone" | "pairing-restored" | "joined" | "roles-changed" | "left" | "returned" | "password-changed" | "password-reset" | "signed-out-everywhere" | "token-made" | "token-revoked" | "link-made" | "link-revoked" | "revoked" | "key-made" | "key-retired" | "club-changed" | "set-up" | "seeded";
            /** @description The record; null where it was none in particular. */
            record: components["schemas"]["JournalRecordView"] | null;
            /** @description What changed, field by field, as far as you may see it. */
            changes: components["schemas"]["JournalChangeView"][];
            /** @description The reason that was given. */
            reason: string | null;
            /**
             * Format: uuid
             * @description Id of the entry whose change this one undid.
             */
            reverses: string | null;
            /**
             * Format: uuid
             * @description Id of the entry that undid this one.
             */
            reversedBy: string | null;
            /** @description Whether there is a way to undo a change of this kind; the record may have changed since. */
            isUndoable: boolean;
            /** @description Its place in the chain; null in the first moments. */
            seal: components["schemas"]["JournalSealView"] | null;
        };
        JournalHeadView: {
            /** @description How many entries are sealed. */
            sequence: number;
            /** @description Hash of the newest seal, hexadecimal; 64 zeros while there is none. */
            hash: string;
            /**
             * Format: date-time
             * @description When it was sealed, RFC 3339 in UTC.
             */
            sealedAt: string | null;
            /** @description How many entries wait for their seal. */
            unsealed: number;
            /** @description For how many seconds the oldest of them waits; 0 where none does. */
            oldestUnsealedSeconds: number;
        };
        WithdrawnView: {
            /**
             * Format: date-time
             * @description When, RFC 3339 in UTC.
             */
            at: string;
            /** @description The reason that was given. */
            reason: string;
        };
        SpeciesRangeView: {
            /**
             * @description What is measured.
             * @enum {string}
             */
            trait: "laying-to-hatching" | "hatching-to-leaving-water" | "maturity" | "sexable-by-looks" | "eggs-per-clutch" | "between-clutches" | "snout-vent-male" | "snout-vent-female" | "lifespan";
            /** @description Least usual value, in `unit`. */
            usualLeast: number | null;
            /** @description Greatest usual value, in `unit`. */
            usualMost: number | null;
            /** @description Least value ever known, in `unit`. */
            extremeLeast: number | null;
            /** @description Greatest value ever known, in `unit`. */
            extremeMost: number | null;
            /**
             * @description Unit of the values.
             * @enum {string}
             */
            unit: "days" | "months" | "eggs" | "mm" | "years";
            /** @description The publication that says so, or "common practice". */
            source: string;
        };
        SpeciesView: {
            /**
             * Format: uuid
             * @description Id of the record.
             */
            id: string;
            /** @description Counts the changes of the record from 1; also its ETag. */
            version: number;
            /**
             * Format: date-time
             * @description When it was entered, RFC 3339 in UTC.
             */
            createdAt: string;
            /**
             * Format: date-time
             * @description When it was last changed, RFC 3339 in UTC.
             */
            updatedAt: string;
            /** @description Set when the record was withdrawn; null while it stands. */
            withdrawn: components["schemas"]["WithdrawnView"] | null;
            /** @description Id of whoever wrote the profile, who may change it as registrars may; null to strangers. */
            keeperId: string | null;
            /** @description Who wrote the profile; null to strangers. */
            keeper: string | null;
            /** @description Scientific name. */
            scientificName: string;
            /** @description Common name. */
            commonName: string | null;
            /**
             * @description CITES appendix that lists it.
             * @enum {string|null}
             */
            citesAppendix: "I" | "II" | "III" | null;
            /** @description Countries it lives in, ISO 3166-1 codes of two letters. */
            nativeRange: string[];
            /** @description Life-history ranges; they warn and never forbid. */
            ranges: components["schemas"]["SpeciesRangeView"][];
        };
        SpeciesRangeRequest: {
            /**
             * @description What is measured; each trait once.
             * @enum {string}
             */
            trait: "laying-to-hatching" | "hatching-to-leaving-water" | "maturity" | "sexable-by-looks" | "eggs-per-clutch" | "between-clutches" | "snout-vent-male" | "snout-vent-female" | "lifespan";
            /** @description Least usual value. */
            usualLeast?: number | null;
            /** @description Greatest usual value. */
            usualMost?: number | null;
            /** @description Least value ever known. */
            extremeLeast?: number | null;
            /** @description Greatest value ever known. */
            extremeMost?: number | null;
            /** @description The publication that says so, or "common practice". */
            source: string;
        };
        NewSpeciesRequest: {
            /**
             * @description Scientific name, unique in the register.
             * @example Epipedobates anthonyi
             */
            scientificName: string;
            /** @description Common name. */
            commonName?: string | null;
            /**
             * @description CITES appendix that lists it.
             * @enum {string|null}
             */
            citesAppendix?: "I" | "II" | "III" | null;
            /** @description Countries it lives in, ISO 3166-1 codes of two letters. */
            nativeRange?: string[];
            /** @description Life-history ranges. */
            ranges?: components["schemas"]["SpeciesRangeRequest"][];
        };
        SpeciesChangeRequest: {
            /**
             * @description Scientific name, unique in the register.
             * @example Epipedobates anthonyi
             */
            scientificName?: string;
            /** @description Common name. */
            commonName?: string | null;
            /**
             * @description CITES appendix that lists it.
             * @enum {string|null}
             */
            citesAppendix?: "I" | "II" | "III" | null;
            /** @description Countries it lives in, ISO 3166-1 codes of two letters. */
            nativeRange?: string[];
            /** @description Life-history ranges. */
            ranges?: components["schemas"]["SpeciesRangeRequest"][];
        };
        WithdrawalRequest: {
            /** @description Why it is withdrawn, 1 to 500 characters; it stays with the record. */
            reason: string;
        };
        LineCountsView: {
            /** @description Animals of the line that stand in the register and may be seen. */
            animals: number;
            /** @description Those of them that are alive. */
            alive: number;
        };
        LineView: {
            /**
             * Format: uuid
             * @description Id of the record.
             */
            id: string;
            /** @description Counts the changes of the record from 1; also its ETag. */
            version: number;
            /**
             * Format: date-time
             * @description When it was entered, RFC 3339 in UTC.
             */
            createdAt: string;
            /**
             * Format: date-time
             * @description When it was last changed, RFC 3339 in UTC.
             */
            updatedAt: string;
            /** @description Set when the record was withdrawn; null while it stands. */
            withdrawn: components["schemas"]["WithdrawnView"] | null;
            /** @description Scientific name of its species. */
            species: string;
            /**
             * Format: uuid
             * @description Id of its species.
             */
            speciesId: string;
            /** @description Name of the line, which is its label. */
            name: string;
            /**
             * @description What the label is: a place, a name of the trade, a cross, or none.
             * @enum {string}
             */
            labelKind: "locality" | "trade-name" | "cross" | "unlabelled";
            /** @description What its keepers agreed on. */
            policy: string | null;
            /** @description How many animals it has. */
            counts: components["schemas"]["LineCountsView"];
        };
        NewLineRequest: {
            /**
             * Format: uuid
             * @description Its species.
             */
            speciesId: string;
            /**
             * @description Its name, which is its label; unique within the species.
             * @example Quebrada Honda
             */
            name: string;
            /**
             * @description What the label is; unlabelled if left out.
             * @enum {string}
             */
            labelKind?: "locality" | "trade-name" | "cross" | "unlabelled";
            /** @description What its keepers agreed on. */
            policy?: string | null;
        };
        LineChangeRequest: {
            /**
             * @description Its name, which is its label; unique within the species.
             * @example Quebrada Honda
             */
            name?: string;
            /**
             * @description What the label is; unlabelled if left out.
             * @enum {string}
             */
            labelKind?: "locality" | "trade-name" | "cross" | "unlabelled";
            /** @description What its keepers agreed on. */
            policy?: string | null;
        };
        SourceView: {
            /**
             * Format: uuid
             * @description Id of the record.
             */
            id: string;
            /** @description Counts the changes of the record from 1; also its ETag. */
            version: number;
            /**
             * Format: date-time
             * @description When it was entered, RFC 3339 in UTC.
             */
            createdAt: string;
            /**
             * Format: date-time
             * @description When it was last changed, RFC 3339 in UTC.
             */
            updatedAt: string;
            /** @description Set when the record was withdrawn; null while it stands. */
            withdrawn: components["schemas"]["WithdrawnView"] | null;
            /** @description Name of the keeper who entered it; null where a stranger asks. */
            keeper: string | null;
            /**
             * Format: uuid
             * @description Id of that keeper; null where a stranger asks.
             */
            keeperId: string | null;
            /** @description What people call it, such as "Import, about 1994"; computed. */
            title: string;
            /** @description The keeper's own code, at most 40 characters. */
            code: string | null;
            /**
             * @description Kind of source.
             * @enum {string}
             */
            kind: "import" | "wild-collection" | "purchase" | "unknown";
            /** @description When its animals came, EDTF. */
            date: string | null;
            /** @description From whom; null where a stranger asks. */
            receivedFrom: string | null;
            /** @description By whom; null where a stranger asks. */
            receivedBy: string | null;
            /** @description Country of export, ISO 3166-1 code of two letters. */
            countryOfExport: string | null;
            /** @description References of permits. */
            permitReferences: string[];
            /** @description Label that its animals came under. */
            labelAsReceived: string | null;
            /** @description What is said about the label. */
            labelNote: string | null;
            /** @description Kinship assumed between any two animals that came together, 0 to 1. */
            baseKinship: number;
            /** @description Notes. */
            notes: string | null;
            /**
             * @description Who may see it: private: its keeper and the registrars (a remark: its keeper alone; an animal besides: keepers who gave it, and one to whom it is on offer); club: every member; public: anyone, where the club allows it.
             * @enum {string}
             */
            visibility: "private" | "club" | "public";
            /** @description Animals in the register that came from it and may be seen. */
            founders: number;
        };
        NewSourceRequest: {
            /**
             * @description The keeper's own code, unique for the keeper; case does not matter.
             * @example S-1
             */
            code?: string | null;
            /**
             * @description Kind of source; unknown if left out.
             * @enum {string}
             */
            kind?: "import" | "wild-collection" | "purchase" | "unknown";
            /**
             * @description When its animals came. EDTF level 1: 2021-04-12, 2021-04, 1994~, 199X, 1993/1996.
             * @example 2021-04-12
             */
            date?: string | null;
            /** @description From whom. */
            receivedFrom?: string | null;
            /** @description By whom. */
            receivedBy?: string | null;
            /**
             * @description Country of export, ISO 3166-1 code of two letters.
             * @example EC
             */
            countryOfExport?: string | null;
            /** @description References of permits. */
            permitReferences?: string[];
            /** @description Label that its animals came under. */
            labelAsReceived?: string | null;
            /** @description What is said about the label. */
            labelNote?: string | null;
            /** @description Kinship assumed between any two animals that came together, 0 to 1; 0 if left out. */
            baseKinship?: number;
            /** @description Notes. */
            notes?: string | null;
            /**
             * @description Who may see it; club if left out.
             * @enum {string}
             */
            visibility?: "private" | "club" | "public";
        };
        SourceChangeRequest: {
            /**
             * @description The keeper's own code, unique for the keeper; case does not matter.
             * @example S-1
             */
            code?: string | null;
            /**
             * @description Kind of source; unknown if left out.
             * @enum {string}
             */
            kind?: "import" | "wild-collection" | "purchase" | "unknown";
            /**
             * @description When its animals came. EDTF level 1: 2021-04-12, 2021-04, 1994~, 199X, 1993/1996.
             * @example 2021-04-12
             */
            date?: string | null;
            /** @description From whom. */
            receivedFrom?: string | null;
            /** @description By whom. */
            receivedBy?: string | null;
            /**
             * @description Country of export, ISO 3166-1 code of two letters.
             * @example EC
             */
            countryOfExport?: string | null;
            /** @description References of permits. */
            permitReferences?: string[];
            /** @description Label that its animals came under. */
            labelAsReceived?: string | null;
            /** @description What is said about the label. */
            labelNote?: string | null;
            /** @description Kinship assumed between any two animals that came together, 0 to 1; 0 if left out. */
            baseKinship?: number;
            /** @description Notes. */
            notes?: string | null;
            /**
             * @description Who may see it; club if left out.
             * @enum {string}
             */
            visibility?: "private" | "club" | "public";
        };
        AnimalAtVersion: {
            /**
             * Format: uuid
             * @description The animal.
             */
            id: string;
            /** @description Its version when it was read. */
            version: number;
        };
        FieldsTogether: {
            /**
             * @description Sex.
             * @enum {string}
             */
            sex?: "male" | "female" | "unsexed";
            /**
             * @description How the sex came to be known.
             * @enum {string|null}
             */
            sexBasis?: "looks" | "calling" | "eggs" | "courtship" | "genetic" | "other" | null;
            /**
             * @description When the sex came to be known. EDTF level 1: 2021-04-12, 2021-04, 1994~, 199X, 1993/1996.
             * @example 2021-04-12
             */
            sexedOn?: string | null;
            /**
             * @description Whether they live.
             * @enum {string}
             */
            status?: "alive" | "died" | "gone" | "unknown";
            /**
             * @description When they died; their status is then died. EDTF level 1: 2021-04-12, 2021-04, 1994~, 199X, 1993/1996.
             * @example 2021-04-12
             */
            died?: string | null;
            /**
             * @description When they left the water. EDTF level 1: 2021-04-12, 2021-04, 1994~, 199X, 1993/1996.
             * @example 2021-04-12
             */
            outOfWater?: string | null;
            /**
             * Format: uuid
             * @description Their line, which must be of their species.
             */
            lineId?: string | null;
            /**
             * @description Who may see them.
             * @enum {string}
             */
            visibility?: "private" | "club" | "public";
        };
        MoveTogether: {
            /**
             * Format: uuid
             * @description The pairing that they join; null: they only leave where they live.
             */
            pairingId: string | null;
            /**
             * @description The day on which they leave where they live and join. EDTF level 1: 2021-04-12, 2021-04, 1994~, 199X, 1993/1996.
             * @example 2021-04-12
             */
            on: string;
        };
        RemarkTogether: {
            /**
             * @description Kind of remark.
             * @enum {string}
             */
            kind: "note" | "measurement" | "health" | "behaviour";
            /**
             * @description When it was observed. EDTF level 1: 2021-04-12, 2021-04, 1994~, 199X, 1993/1996.
             * @example 2021-04-12
             */
            observedOn: string;
            /** @description What was observed. */
            text?: string | null;
            /** @description Snout-vent length in millimetres. */
            svlMm?: number | null;
            /** @description Mass in grams. */
            massG?: number | null;
            /**
             * @description Who may see it; club if left out. A private remark is seen by its keeper alone.
             * @enum {string}
             */
            visibility?: "private" | "club" | "public";
        };
        ChangeTogetherRequest: {
            /** @description The animals, each once. */
            animals: components["schemas"]["AnimalAtVersion"][];
            /** @description Fields that each of them gets. */
            fields?: components["schemas"]["FieldsTogether"];
            /** @description Where they go to live. */
            move?: components["schemas"]["MoveTogether"];
            /** @description A remark that each of them gets. */
            remark?: components["schemas"]["RemarkTogether"];
        };
        FieldChangeView: {
            /**
             * @description What changes: a field of the animal, `pairing` for where it lives, or `remark`.
             * @example sex
             */
            field: string;
            /** @description What it is now; null for nothing. */
            before: string | null;
            /** @description What it becomes; null for nothing. */
            after: string | null;
        };
        AnimalTogetherView: {
            /**
             * Format: uuid
             * @description Its id, as it was asked for.
             */
            id: string;
            /**
             * @description Its registry number; null where there is no such animal.
             * @example 10704-4
             */
            number: string | null;
            /** @description The keeper's own code. */
            code: string | null;
            /** @description Name of its keeper. */
            keeper: string | null;
            /** @description Its version now, after the change where it was written; null where there is none. */
            version: number | null;
            /**
             * @description changes: it becomes another; same: it is so already; refused: it cannot be.
             * @enum {string}
             */
            outcome: "changes" | "same" | "refused";
            /**
             * @description Why it is refused: missing (or not to be seen), not-yours, withdrawn, stale (changed since that version), elsewhere (it lives in a pairing of another keeper), rule (one of the register).
             * @enum {string|null}
             */
            refusal: "missing" | "not-yours" | "withdrawn" | "stale" | "elsewhere" | "rule" | null;
            /** @description The reason in words, and what to do. */
            detail: string | null;
            /** @description What changes of it. */
            changes: components["schemas"]["FieldChangeView"][];
        };
        ChangedTogetherView: {
            /** @description How many animals change. */
            changing: number;
            /** @description How many are so already, and are left alone. */
            same: number;
            /** @description How many cannot be changed so; as long as there are any, nothing is written. */
            refused: number;
            /** @description Each animal, in the order asked for. */
            items: components["schemas"]["AnimalTogetherView"][];
        };
        IndividualItemView: {
            /**
             * Format: uuid
             * @description Id of the record.
             */
            id: string;
            /** @description Counts the changes of the record from 1; also its ETag. */
            version: number;
            /**
             * Format: date-time
             * @description When it was entered, RFC 3339 in UTC.
             */
            createdAt: string;
            /**
             * Format: date-time
             * @description When it was last changed, RFC 3339 in UTC.
             */
            updatedAt: string;
            /** @description Set when the record was withdrawn; null while it stands. */
            withdrawn: components["schemas"]["WithdrawnView"] | null;
            /**
             * @description Registry number with its check character.
             * @example 10704-4
             */
            number: string;
            /** @description The keeper's own code, at most 40 characters. */
            code: string | null;
            /** @description Scientific name of its species. */
            species: string;
            /**
             * Format: uuid
             * @description Id of its species.
             */
            speciesId: string;
            /** @description Name of its line. */
            line: string | null;
            /**
             * Format: uuid
             * @description Id of its line.
             */
            lineId: string | null;
            /**
             * @description What the line's label is.
             * @enum {string|null}
             */
            labelKind: "locality" | "trade-name" | "cross" | "unlabelled" | null;
            /**
             * @description Sex.
             * @enum {string}
             */
            sex: "male" | "female" | "unsexed";
            /**
             * @description Whether it lives.
             * @enum {string}
             */
            status: "alive" | "died" | "gone" | "unknown";
            /** @description When it hatched, EDTF. */
            hatched: string | null;
            /** @description When it left the water, EDTF. */
            outOfWater: string | null;
            /** @description Name of its keeper; null where a stranger asks. */
            keeper: string | null;
            /**
             * Format: uuid
             * @description Id of its keeper; null where a stranger asks.
             */
            keeperId: string | null;
            /**
             * @description Who may see it: private: its keeper and the registrars (a remark: its keeper alone; an animal besides: keepers who gave it, and one to whom it is on offer); club: every member; public: anyone, where the club allows it.
             * @enum {string}
             */
            visibility: "private" | "club" | "public";
        };
        OriginSourceView: {
            /** @description Id of the source; "private-source-1" where it may not be seen. */
            id: string;
            /** @description Code of the source. */
            code: string | null;
            /** @description What people call it, such as "Import, about 1994". */
            title: string;
            /** @description Whether it is a private source that whoever asks may not see. */
            isPrivate: boolean;
        };
        OriginClutchView: {
            /** @description Id of the clutch; "private-clutch-1" where it may not be seen. */
            id: string;
            /** @description Code of the clutch. */
            code: string | null;
            /** @description What people call it, such as "clutch of 2021-04-12". */
            title: string;
            /** @description When it was laid, EDTF. */
            laid: string | null;
            /** @description Whether it is a private clutch that whoever asks may not see. */
            isPrivate: boolean;
        };
        ConfirmationView: {
            /** @description Why it is accepted. */
            reason: string;
            /** @description Name of the keeper who accepted it; null where a stranger asks. */
            keeper: string | null;
            /**
             * Format: date-time
             * @description When, RFC 3339 in UTC.
             */
            at: string;
        };
        WarningView: {
            /**
             * @description Which warning; a record has each at most once.
             * @example young-dam
             */
            code: string;
            /** @description What was found and what is usual, in words with figures. */
            detail: string;
            /** @description Fields of the record that it concerns. */
            fields: string[];
            /** @description Set once a keeper has accepted it in these words. */
            confirmed: components["schemas"]["ConfirmationView"] | null;
        };
        StayView: {
            /**
             * Format: uuid
             * @description Id of the pairing.
             */
            id: string;
            /** @description Name of the pairing. */
            name: string;
            /**
             * @description Males.females.unsexed housed now; of all who ever were, where none is left. Animals that may not be seen are not counted.
             * @example 1.2.0
             */
            notation: string;
            /** @description When the animal joined, EDTF. */
            joined: string | null;
            /** @description When the animal left, EDTF. */
            left: string | null;
        };
        OwnClutchView: {
            /**
             * Format: uuid
             * @description Id of the clutch.
             */
            id: string;
            /** @description What people call it. */
            title: string;
            /** @description When it was laid, EDTF. */
            laid: string | null;
            /** @description Eggs. */
            eggs: number | null;
            /** @description Eggs that hatched. */
            hatched: number | null;
            /** @description Young that left the water. */
            outOfWater: number | null;
            /**
             * @description The role of the animal; "either" in a group that cannot be sexed.
             * @enum {string}
             */
            role: "sire" | "dam" | "either";
            /** @description Probability that the animal is a parent of it, over 0 to 1. */
            probability: number;
        };
        MateView: {
            /** @description Id of the animal; "private-1" and so on, numbered within the answer, where it may not be seen. */
            id: string;
            /**
             * @description Registry number with its check character; null where it may not be seen.
             * @example 10704-4
             */
            number: string | null;
            /** @description The keeper's own code. */
            code: string | null;
            /**
             * @description Sex; unsexed where it may not be seen.
             * @enum {string}
             */
            sex: "male" | "female" | "unsexed";
            /** @description Whether it is a private animal that whoever asks may not see. */
            isPrivate: boolean;
            /** @description Probability of being the other parent (in a group: of being the pair with this animal), over 0 to 1. */
            probability: number;
        };
        YoungAnimalView: {
            /** @description Id of the animal; "private-1" and so on, numbered within the answer, where it may not be seen. */
            id: string;
            /**
             * @description Registry number with its check character; null where it may not be seen.
             * @example 10704-4
             */
            number: string | null;
            /** @description The keeper's own code. */
            code: string | null;
            /**
             * @description Sex; unsexed where it may not be seen.
             * @enum {string}
             */
            sex: "male" | "female" | "unsexed";
            /** @description Whether it is a private animal that whoever asks may not see. */
            isPrivate: boolean;
            /**
             * @description Whether it lives; unknown where it may not be seen.
             * @enum {string}
             */
            status: "alive" | "died" | "gone" | "unknown";
            /** @description Whether a clutch that may be seen names it as a possible parent; false where it may not be seen itself. */
            hasYoung: boolean;
        };
        YoungView: {
            /** @description The clutch. */
            clutch: components["schemas"]["OwnClutchView"];
            /** @description Who may be the other parent, most probable first. */
            mates: components["schemas"]["MateView"][];
            /** @description Its young in the register, by number. */
            animals: components["schemas"]["YoungAnimalView"][];
        };
        MergedIntoView: {
            /**
             * Format: uuid
             * @description Id of that record.
             */
            id: string;
            /**
             * @description Its registry number with its check character.
             * @example 10704-4
             */
            number: string;
        };
        MergedRecordOfView: {
            /**
             * Format: uuid
             * @description Id of that record.
             */
            id: string;
            /**
             * @description Its registry number with its check character.
             * @example 10704-4
             */
            number: string;
            /**
             * Format: uuid
             * @description Id of the merging, by which it can be undone.
             */
            mergeId: string;
        };
        RemarkView: {
            /**
             * Format: uuid
             * @description Id of the observation.
             */
            id: string;
            /**
             * @description Kind of remark.
             * @enum {string}
             */
            kind: "note" | "measurement" | "health" | "behaviour";
            /** @description When it was observed, EDTF. */
            observedOn: string | null;
            /** @description What was observed. */
            text: string | null;
            /** @description Snout-vent length in millimetres. */
            svlMm: number | null;
            /** @description Mass in grams. */
            massG: number | null;
        };
        IndividualView: {
            /**
             * Format: uuid
             * @description Id of the record.
             */
            id: string;
            /** @description Counts the changes of the record from 1; also its ETag. */
            version: number;
            /**
             * Format: date-time
             * @description When it was entered, RFC 3339 in UTC.
             */
            createdAt: string;
            /**
             * Format: date-time
             * @description When it was last changed, RFC 3339 in UTC.
             */
            updatedAt: string;
            /** @description Set when the record was withdrawn; null while it stands. */
            withdrawn: components["schemas"]["WithdrawnView"] | null;
            /**
             * @description Registry number with its check character.
             * @example 10704-4
             */
            number: string;
            /** @description The keeper's own code, at most 40 characters. */
            code: string | null;
            /** @description Scientific name of its species. */
            species: string;
            /**
             * Format: uuid
             * @description Id of its species.
             */
            speciesId: string;
            /** @description Name of its line. */
            line: string | null;
            /**
             * Format: uuid
             * @description Id of its line.
             */
            lineId: string | null;
            /**
             * @description What the line's label is.
             * @enum {string|null}
             */
            labelKind: "locality" | "trade-name" | "cross" | "unlabelled" | null;
            /**
             * @description Sex.
             * @enum {string}
             */
            sex: "male" | "female" | "unsexed";
            /**
             * @description Whether it lives.
             * @enum {string}
             */
            status: "alive" | "died" | "gone" | "unknown";
            /** @description When it hatched, EDTF. */
            hatched: string | null;
            /** @description When it left the water, EDTF. */
            outOfWater: string | null;
            /** @description Name of its keeper; null where a stranger asks. */
            keeper: string | null;
            /**
             * Format: uuid
             * @description Id of its keeper; null where a stranger asks.
             */
            keeperId: string | null;
            /**
             * @description Who may see it: private: its keeper and the registrars (a remark: its keeper alone; an animal besides: keepers who gave it, and one to whom it is on offer); club: every member; public: anyone, where the club allows it.
             * @enum {string}
             */
            visibility: "private" | "club" | "public";
            /**
             * @description How the sex came to be known.
             * @enum {string|null}
             */
            sexBasis: "looks" | "calling" | "eggs" | "courtship" | "genetic" | "other" | null;
            /** @description When the sex came to be known, EDTF. */
            sexedOn: string | null;
            /** @description The source it came from. */
            source: components["schemas"]["OriginSourceView"] | null;
            /** @description The clutch it came from. */
            clutch: components["schemas"]["OriginClutchView"] | null;
            /** @description When it died, EDTF. */
            died: string | null;
            /** @description Notes. */
            notes: string | null;
            /** @description Whether a clutch that is certainly its own has hatched; computed. */
            proven: boolean;
            /** @description What looks implausible; it never blocks. */
            warnings: components["schemas"]["WarningView"][];
            /** @description Pairings it lives or lived in, newest first. */
            pairings: components["schemas"]["StayView"][];
            /** @description Clutches that are or may be its own, newest first. */
            young: components["schemas"]["YoungView"][];
            /** @description The record of the same animal that goes on in the place of this one; null where it was not merged. */
            mergedInto: components["schemas"]["MergedIntoView"] | null;
            /** @description Records of the same animal that were merged into this one, by number. */
            merges: components["schemas"]["MergedRecordOfView"][];
            /** @description The last 50 remarks, newest first. */
            observations: components["schemas"]["RemarkView"][];
        };
        NewIndividualRequest: {
            /**
             * @description The keeper's own code, unique for the keeper; case does not matter.
             * @example EA-07
             */
            code?: string | null;
            /**
             * Format: uuid
             * @description Its species.
             */
            speciesId: string;
            /**
             * Format: uuid
             * @description Its line, which must be of the same species.
             */
            lineId?: string | null;
            /**
             * @description Sex; unsexed if left out.
             * @enum {string}
             */
            sex?: "male" | "female" | "unsexed";
            /**
             * @description How the sex came to be known.
             * @enum {string|null}
             */
            sexBasis?: "looks" | "calling" | "eggs" | "courtship" | "genetic" | "other" | null;
            /**
             * @description When the sex came to be known. EDTF level 1: 2021-04-12, 2021-04, 1994~, 199X, 1993/1996.
             * @example 2021-04-12
             */
            sexedOn?: string | null;
            /**
             * Format: uuid
             * @description The source it came from; not together with a clutch.
             */
            sourceId?: string | null;
            /**
             * Format: uuid
             * @description The clutch it came from; not together with a source.
             */
            clutchId?: string | null;
            /**
             * @description When it hatched. EDTF level 1: 2021-04-12, 2021-04, 1994~, 199X, 1993/1996.
             * @example 2021-04-12
             */
            hatched?: string | null;
            /**
             * @description When it left the water. EDTF level 1: 2021-04-12, 2021-04, 1994~, 199X, 1993/1996.
             * @example 2021-04-12
             */
            outOfWater?: string | null;
            /**
             * @description When it died; its status is then died. EDTF level 1: 2021-04-12, 2021-04, 1994~, 199X, 1993/1996.
             * @example 2021-04-12
             */
            died?: string | null;
            /**
             * @description Whether it lives; alive if left out, died if a date of death is given.
             * @enum {string}
             */
            status?: "alive" | "died" | "gone" | "unknown";
            /** @description Notes. */
            notes?: string | null;
            /**
             * @description Who may see it; club if left out.
             * @enum {string}
             */
            visibility?: "private" | "club" | "public";
        };
        IndividualChangeRequest: {
            /**
             * @description The keeper's own code, unique for the keeper; case does not matter.
             * @example EA-07
             */
            code?: string | null;
            /**
             * Format: uuid
             * @description Its species.
             */
            speciesId?: string;
            /**
             * Format: uuid
             * @description Its line, which must be of the same species.
             */
            lineId?: string | null;
            /**
             * @description Sex; unsexed if left out.
             * @enum {string}
             */
            sex?: "male" | "female" | "unsexed";
            /**
             * @description How the sex came to be known.
             * @enum {string|null}
             */
            sexBasis?: "looks" | "calling" | "eggs" | "courtship" | "genetic" | "other" | null;
            /**
             * @description When the sex came to be known. EDTF level 1: 2021-04-12, 2021-04, 1994~, 199X, 1993/1996.
             * @example 2021-04-12
             */
            sexedOn?: string | null;
            /**
             * Format: uuid
             * @description The source it came from; not together with a clutch.
             */
            sourceId?: string | null;
            /**
             * Format: uuid
             * @description The clutch it came from; not together with a source.
             */
            clutchId?: string | null;
            /**
             * @description When it hatched. EDTF level 1: 2021-04-12, 2021-04, 1994~, 199X, 1993/1996.
             * @example 2021-04-12
             */
            hatched?: string | null;
            /**
             * @description When it left the water. EDTF level 1: 2021-04-12, 2021-04, 1994~, 199X, 1993/1996.
             * @example 2021-04-12
             */
            outOfWater?: string | null;
            /**
             * @description When it died; its status is then died. EDTF level 1: 2021-04-12, 2021-04, 1994~, 199X, 1993/1996.
             * @example 2021-04-12
             */
            died?: string | null;
            /**
             * @description Whether it lives; alive if left out, died if a date of death is given.
             * @enum {string}
             */
            status?: "alive" | "died" | "gone" | "unknown";
            /** @description Notes. */
            notes?: string | null;
            /**
             * @description Who may see it; club if left out.
             * @enum {string}
             */
            visibility?: "private" | "club" | "public";
        };
        AnimalStatusView: {
            /** @description Id of the animal; "private-1" and so on, numbered within the answer, where it may not be seen. */
            id: string;
            /**
             * @description Registry number with its check character; null where it may not be seen.
             * @example 10704-4
             */
            number: string | null;
            /** @description The keeper's own code. */
            code: string | null;
            /**
             * @description Sex; unsexed where it may not be seen.
             * @enum {string}
             */
            sex: "male" | "female" | "unsexed";
            /** @description Whether it is a private animal that whoever asks may not see. */
            isPrivate: boolean;
            /**
             * @description Whether it lives; unknown where it may not be seen.
             * @enum {string}
             */
            status: "alive" | "died" | "gone" | "unknown";
        };
        PairingMemberView: {
            /**
             * Format: uuid
             * @description Id of the stay.
             */
            id: string;
            /** @description The animal. */
            individual: components["schemas"]["AnimalStatusView"];
            /** @description When it joined, EDTF; of a private animal told only to the keeper of the pairing. */
            joined: string | null;
            /** @description When it left, EDTF; null while it lives there, and where `joined` is not told. */
            left: string | null;
        };
        PairingClutchView: {
            /**
             * Format: uuid
             * @description Id of the clutch.
             */
            id: string;
            /** @description What people call it. */
            title: string;
            /** @description When it was laid, EDTF. */
            laid: string | null;
            /** @description Eggs. */
            eggs: number | null;
        };
        PairingView: {
            /**
             * Format: uuid
             * @description Id of the record.
             */
            id: string;
            /** @description Counts the changes of the record from 1; also its ETag. */
            version: number;
            /**
             * Format: date-time
             * @description When it was entered, RFC 3339 in UTC.
             */
            createdAt: string;
            /**
             * Format: date-time
             * @description When it was last changed, RFC 3339 in UTC.
             */
            updatedAt: string;
            /** @description Set when the record was withdrawn; null while it stands. */
            withdrawn: components["schemas"]["WithdrawnView"] | null;
            /** @description Name of the pairing. */
            name: string;
            /** @description Name of its keeper. */
            keeper: string;
            /**
             * Format: uuid
             * @description Id of its keeper.
             */
            keeperId: string;
            /** @description Notes. */
            notes: string | null;
            /**
             * @description Males.females.unsexed housed now; of all who ever were, where none is left. Animals that may not be seen are not counted.
             * @example 1.2.0
             */
            notation: string;
            /** @description Every stay, those who live there now first, private animals last. */
            members: components["schemas"]["PairingMemberView"][];
            /** @description Its last 200 clutches, newest first. */
            clutches: components["schemas"]["PairingClutchView"][];
        };
        CorrectedClutchView: {
            /**
             * Format: uuid
             * @description Id of the clutch.
             */
            id: string;
            /** @description What people call it, such as "clutch of 2021-04-12"; computed. */
            title: string;
            /** @description Its version now, for If-Match. */
            version: number;
            /** @description When it was laid, EDTF. */
            laid: string | null;
            /** @description Whether its recorded parents came from the housing; name it again to put them back. */
            parentsFromPairing: boolean;
        };
        ParentCorrectionView: {
            /** @description The clutch. */
            clutch: components["schemas"]["CorrectedClutchView"];
            /** @description Who may be the parents as it is recorded. */
            recorded: components["schemas"]["ParentListsView"] | components["schemas"]["ParentPairsView"];
            /** @description Who would be proposed now from the animals housed when it was laid; a side that the keeper narrowed or gave odds stays as recorded while all its animals lived there. */
            housed: components["schemas"]["ParentListsView"] | components["schemas"]["ParentPairsView"];
            /**
             * @description Why it is offered, in a sentence or two.
             * @example LK-02 did not live here when it was laid.
             */
            why: string;
        };
        ParentCorrectionsView: {
            /** @description One entry a clutch, newest first; at most 200, the rest follows once these are made. */
            items: components["schemas"]["ParentCorrectionView"][];
        };
        NewMemberRequest: {
            /** @description The animal: its id or its registry number. */
            individualId: string;
            /**
             * @description When it joined. EDTF level 1: 2021-04-12, 2021-04, 1994~, 199X, 1993/1996.
             * @example 2021-04-12
             */
            joined?: string | null;
            /**
             * @description When it left; left out while it lives there. EDTF level 1: 2021-04-12, 2021-04, 1994~, 199X, 1993/1996.
             * @example 2021-04-12
             */
            left?: string | null;
        };
        NewPairingRequest: {
            /** @description Its name, such as the tank. */
            name: string;
            /** @description Notes. */
            notes?: string | null;
            /** @description The animals. */
            members?: components["schemas"]["NewMemberRequest"][];
        };
        PairingChangeRequest: {
            /** @description Its name, such as the tank. */
            name?: string;
            /** @description Notes. */
            notes?: string | null;
        };
        MemberChangeRequest: {
            /**
             * @description When it joined. EDTF level 1: 2021-04-12, 2021-04, 1994~, 199X, 1993/1996.
             * @example 2021-04-12
             */
            joined?: string | null;
            /**
             * @description When it left; left out while it lives there. EDTF level 1: 2021-04-12, 2021-04, 1994~, 199X, 1993/1996.
             * @example 2021-04-12
             */
            left?: string | null;
        };
        CandidateView: {
            /** @description The animal; null stands for one that nobody knows. */
            individual: components["schemas"]["AnimalStatusView"] | null;
            /** @description Probability that it is the parent, over 0 to 1; those of a side sum to 1. */
            probability: number;
            /** @description Why it is thought so. */
            reason: string | null;
        };
        ParentListsView: {
            /**
             * @description Says that the sides are listed apart. (enum property replaced by openapi-typescript)
             * @enum {string}
             */
            mode: "lists";
            /** @description Candidate sires, most probable first; empty where nothing is known. */
            sires: components["schemas"]["CandidateView"][];
            /** @description Candidate dams, most probable first; empty where nothing is known. */
            dams: components["schemas"]["CandidateView"][];
        };
        CandidatePairView: {
            /** @description One of the two. */
            a: components["schemas"]["AnimalStatusView"];
            /** @description The other. */
            b: components["schemas"]["AnimalStatusView"];
            /** @description Probability that they are the parents, over 0 to 1; those of all pairs sum to 1. */
            probability: number;
            /** @description Why it is thought so. */
            reason: string | null;
        };
        ParentPairsView: {
            /**
             * @description Says that pairs are listed. (enum property replaced by openapi-typescript)
             * @enum {string}
             */
            mode: "pairs";
            /** @description Candidate pairs, most probable first. */
            pairs: components["schemas"]["CandidatePairView"][];
        };
        ClutchPairingView: {
            /**
             * Format: uuid
             * @description Id of the pairing.
             */
            id: string;
            /** @description Name of the pairing. */
            name: string;
        };
        ExpectedWindowView: {
            /**
             * @description What is expected: that it hatches, or that its young leave the water.
             * @enum {string}
             */
            event: "hatching" | "leaving-water";
            /**
             * Format: date
             * @description The first possible day that is counted from, YYYY-MM-DD.
             */
            since: string;
            /**
             * Format: date
             * @description First day, YYYY-MM-DD: the first possible start and the least usual days of the species' profile.
             */
            from: string;
            /**
             * Format: date
             * @description Last day, YYYY-MM-DD: the last possible start and the most usual days of the species' profile.
             */
            to: string;
            /**
             * @description What the days are counted from: the laying, or the hatching where its day is known.
             * @enum {string}
             */
            countedFrom: "laying" | "hatching";
            /**
             * Format: uuid
             * @description Id of the species whose profile says so.
             */
            speciesId: string;
            /** @description Scientific name of that species. */
            species: string;
        };
        LossView: {
            /**
             * @description Cause.
             * @enum {string}
             */
            cause: "infertile" | "mould" | "eaten" | "dried-out" | "deformed" | "unknown";
            /** @description How many eggs or tadpoles. */
            count: number;
        };
        ClutchItemView: {
            /**
             * Format: uuid
             * @description Id of the record.
             */
            id: string;
            /** @description Counts the changes of the record from 1; also its ETag. */
            version: number;
            /**
             * Format: date-time
             * @description When it was entered, RFC 3339 in UTC.
             */
            createdAt: string;
            /**
             * Format: date-time
             * @description When it was last changed, RFC 3339 in UTC.
             */
            updatedAt: string;
            /** @description Set when the record was withdrawn; null while it stands. */
            withdrawn: components["schemas"]["WithdrawnView"] | null;
            /** @description What people call it, such as "clutch of 2021-04-12"; computed. */
            title: string;
            /** @description The keeper's own code, at most 40 characters. */
            code: string | null;
            /** @description Name of its keeper. */
            keeper: string;
            /**
             * Format: uuid
             * @description Id of its keeper.
             */
            keeperId: string;
            /** @description The pairing that it was laid in; null also where that may not be seen. */
            pairing: components["schemas"]["ClutchPairingView"] | null;
            /** @description When it was laid, EDTF. */
            laid: string | null;
            /** @description Eggs laid. */
            eggs: number | null;
            /** @description Eggs that were fertile. */
            fertile: number | null;
            /** @description Eggs that hatched. */
            hatched: number | null;
            /** @description When they hatched, EDTF. */
            hatchedOn: string | null;
            /** @description Young that left the water. */
            outOfWater: number | null;
            /**
             * @description How far it is: `egg` while nothing hatched, `water` while tadpoles are left, `out` once those left the water, `ended` where nothing came of it; computed from counts, losses and young.
             * @enum {string}
             */
            stage: "egg" | "water" | "out" | "ended";
            /** @description What is expected of it next, and when; null once it is out of the water, and where dates or the profile of the species do not say. */
            expected: components["schemas"]["ExpectedWindowView"] | null;
            /** @description Losses by cause. */
            losses: components["schemas"]["LossView"][];
            /** @description Where it was laid. */
            site: string | null;
            /** @description Notes. */
            notes: string | null;
            /** @description Who may be the parents. */
            parents: components["schemas"]["ParentListsView"] | components["schemas"]["ParentPairsView"];
            /** @description Whether the parents were taken from the animals housed in its pairing when it was laid, all at equal odds. */
            parentsFromPairing: boolean;
        };
        ClutchView: {
            /**
             * Format: uuid
             * @description Id of the record.
             */
            id: string;
            /** @description Counts the changes of the record from 1; also its ETag. */
            version: number;
            /**
             * Format: date-time
             * @description When it was entered, RFC 3339 in UTC.
             */
            createdAt: string;
            /**
             * Format: date-time
             * @description When it was last changed, RFC 3339 in UTC.
             */
            updatedAt: string;
            /** @description Set when the record was withdrawn; null while it stands. */
            withdrawn: components["schemas"]["WithdrawnView"] | null;
            /** @description What people call it, such as "clutch of 2021-04-12"; computed. */
            title: string;
            /** @description The keeper's own code, at most 40 characters. */
            code: string | null;
            /** @description Name of its keeper. */
            keeper: string;
            /**
             * Format: uuid
             * @description Id of its keeper.
             */
            keeperId: string;
            /** @description The pairing that it was laid in; null also where that may not be seen. */
            pairing: components["schemas"]["ClutchPairingView"] | null;
            /** @description When it was laid, EDTF. */
            laid: string | null;
            /** @description Eggs laid. */
            eggs: number | null;
            /** @description Eggs that were fertile. */
            fertile: number | null;
            /** @description Eggs that hatched. */
            hatched: number | null;
            /** @description When they hatched, EDTF. */
            hatchedOn: string | null;
            /** @description Young that left the water. */
            outOfWater: number | null;
            /**
             * @description How far it is: `egg` while nothing hatched, `water` while tadpoles are left, `out` once those left the water, `ended` where nothing came of it; computed from counts, losses and young.
             * @enum {string}
             */
            stage: "egg" | "water" | "out" | "ended";
            /** @description What is expected of it next, and when; null once it is out of the water, and where dates or the profile of the species do not say. */
            expected: components["schemas"]["ExpectedWindowView"] | null;
            /** @description Losses by cause. */
            losses: components["schemas"]["LossView"][];
            /** @description Where it was laid. */
            site: string | null;
            /** @description Notes. */
            notes: string | null;
            /** @description Who may be the parents. */
            parents: components["schemas"]["ParentListsView"] | components["schemas"]["ParentPairsView"];
            /** @description Whether the parents were taken from the animals housed in its pairing when it was laid, all at equal odds. */
            parentsFromPairing: boolean;
            /** @description Its young in the register that may be seen, by number. */
            young: components["schemas"]["IndividualItemView"][];
            /** @description How many more young it has that may not be seen. */
            privateYoung: number;
            /** @description What looks implausible; it never blocks. */
            warnings: components["schemas"]["WarningView"][];
        };
        LossRequest: {
            /**
             * @description Cause; each once.
             * @enum {string}
             */
            cause: "infertile" | "mould" | "eaten" | "dried-out" | "deformed" | "unknown";
            /** @description How many eggs or tadpoles. */
            count: number;
        };
        CandidateRequest: {
            /** @description The animal: its id or its registry number; null for one that nobody knows. */
            individualId: string | null;
            /** @description How likely, compared with the others of the list; 1 if left out. */
            weight?: number;
            /** @description Why, such as "seen calling". */
            reason?: string | null;
        };
        CandidatePairRequest: {
            /** @description One of the two: its id or its registry number. */
            a: string;
            /** @description The other: its id or its registry number. */
            b: string;
            /** @description How likely, compared with the others of the list; 1 if left out. */
            weight?: number;
            /** @description Why, such as "seen calling". */
            reason?: string | null;
        };
        YoungRequest: {
            /** @description The keeper's own code, unique for the keeper; case does not matter. */
            code?: string | null;
            /**
             * @description Sex; unsexed if left out.
             * @enum {string}
             */
            sex?: "male" | "female" | "unsexed";
            /**
             * @description When it hatched. EDTF level 1: 2021-04-12, 2021-04, 1994~, 199X, 1993/1996.
             * @example 2021-04-12
             */
            hatched?: string | null;
            /**
             * @description When it left the water. EDTF level 1: 2021-04-12, 2021-04, 1994~, 199X, 1993/1996.
             * @example 2021-04-12
             */
            outOfWater?: string | null;
            /**
             * Format: uuid
             * @description Its line; left out, the line that all its possible parents share.
             */
            lineId?: string | null;
            /** @description Notes. */
            notes?: string | null;
        };
        OffspringRequest: {
            /** @description How many, where nothing is known of each. */
            count?: number;
            /** @description Each young. */
            animals?: components["schemas"]["YoungRequest"][];
            /**
             * Format: uuid
             * @description Their species; needed only where the parents do not tell it.
             */
            speciesId?: string;
        };
        NewClutchRequest: {
            /**
             * Format: uuid
             * @description The pairing that it was laid in.
             */
            pairingId?: string | null;
            /**
             * @description The keeper's own code, unique for the keeper; case does not matter.
             * @example C-2021-04
             */
            code?: string | null;
            /**
             * @description When it was laid. EDTF level 1: 2021-04-12, 2021-04, 1994~, 199X, 1993/1996.
             * @example 2021-04-12
             */
            laid?: string | null;
            /** @description Eggs laid. */
            eggs?: number | null;
            /** @description Eggs that were fertile; no more than were laid. */
            fertile?: number | null;
            /** @description Eggs that hatched; no more than were laid or fertile. */
            hatched?: number | null;
            /**
             * @description When they hatched; not before it was laid. Left out, the water is reckoned from the laying. EDTF level 1: 2021-04-12, 2021-04, 1994~, 199X, 1993/1996.
             * @example 2021-04-12
             */
            hatchedOn?: string | null;
            /** @description Young that left the water; no more than hatched. */
            outOfWater?: number | null;
            /** @description Losses by cause. */
            losses?: components["schemas"]["LossRequest"][];
            /** @description Where it was laid. */
            site?: string | null;
            /** @description Notes. */
            notes?: string | null;
            /** @description Candidate sires; an empty list says that nothing is known. */
            sires?: components["schemas"]["CandidateRequest"][];
            /** @description Candidate dams; an empty list says that nothing is known. */
            dams?: components["schemas"]["CandidateRequest"][];
            /** @description Candidate pairs instead of sires and dams, where sexes are not known. */
            pairs?: components["schemas"]["CandidatePairRequest"][];
            /** @description Young that are raised from it at once; they can also be added later. */
            offspring?: components["schemas"]["OffspringRequest"];
        };
        YoungFiguresView: {
            /**
             * Format: uuid
             * @description Id of the animal.
             */
            id: string;
            /** @description Inbreeding coefficient, expected over its candidate parents (Wright 1922). */
            inbreeding: number;
            /** @description Least inbreeding coefficient that its candidate parents allow. */
            inbreedingLeast: number;
            /** @description Greatest inbreeding coefficient that its candidate parents allow. */
            inbreedingGreatest: number;
            /** @description Generations on the longest recorded path to a founder. */
            depth: number;
            /** @description Whether these figures follow the newest change; false while they are recomputed. */
            current: boolean;
        };
        NewClutchView: {
            /**
             * Format: uuid
             * @description Id of the record.
             */
            id: string;
            /** @description Counts the changes of the record from 1; also its ETag. */
            version: number;
            /**
             * Format: date-time
             * @description When it was entered, RFC 3339 in UTC.
             */
            createdAt: string;
            /**
             * Format: date-time
             * @description When it was last changed, RFC 3339 in UTC.
             */
            updatedAt: string;
            /** @description Set when the record was withdrawn; null while it stands. */
            withdrawn: components["schemas"]["WithdrawnView"] | null;
            /** @description What people call it, such as "clutch of 2021-04-12"; computed. */
            title: string;
            /** @description The keeper's own code, at most 40 characters. */
            code: string | null;
            /** @description Name of its keeper. */
            keeper: string;
            /**
             * Format: uuid
             * @description Id of its keeper.
             */
            keeperId: string;
            /** @description The pairing that it was laid in; null also where that may not be seen. */
            pairing: components["schemas"]["ClutchPairingView"] | null;
            /** @description When it was laid, EDTF. */
            laid: string | null;
            /** @description Eggs laid. */
            eggs: number | null;
            /** @description Eggs that were fertile. */
            fertile: number | null;
            /** @description Eggs that hatched. */
            hatched: number | null;
            /** @description When they hatched, EDTF. */
            hatchedOn: string | null;
            /** @description Young that left the water. */
            outOfWater: number | null;
            /**
             * @description How far it is: `egg` while nothing hatched, `water` while tadpoles are left, `out` once those left the water, `ended` where nothing came of it; computed from counts, losses and young.
             * @enum {string}
             */
            stage: "egg" | "water" | "out" | "ended";
            /** @description What is expected of it next, and when; null once it is out of the water, and where dates or the profile of the species do not say. */
            expected: components["schemas"]["ExpectedWindowView"] | null;
            /** @description Losses by cause. */
            losses: components["schemas"]["LossView"][];
            /** @description Where it was laid. */
            site: string | null;
            /** @description Notes. */
            notes: string | null;
            /** @description Who may be the parents. */
            parents: components["schemas"]["ParentListsView"] | components["schemas"]["ParentPairsView"];
            /** @description Whether the parents were taken from the animals housed in its pairing when it was laid, all at equal odds. */
            parentsFromPairing: boolean;
            /** @description Its young in the register that may be seen, by number. */
            young: components["schemas"]["IndividualItemView"][];
            /** @description How many more young it has that may not be seen. */
            privateYoung: number;
            /** @description What looks implausible; it never blocks. */
            warnings: components["schemas"]["WarningView"][];
            /** @description Figures of the young that were raised with it, in the order of `young`; left out where there are none. */
            figures?: components["schemas"]["YoungFiguresView"][];
        };
        ClutchChangeRequest: {
            /**
             * Format: uuid
             * @description The pairing that it was laid in.
             */
            pairingId?: string | null;
            /**
             * @description The keeper's own code, unique for the keeper; case does not matter.
             * @example C-2021-04
             */
            code?: string | null;
            /**
             * @description When it was laid. EDTF level 1: 2021-04-12, 2021-04, 1994~, 199X, 1993/1996.
             * @example 2021-04-12
             */
            laid?: string | null;
            /** @description Eggs laid. */
            eggs?: number | null;
            /** @description Eggs that were fertile; no more than were laid. */
            fertile?: number | null;
            /** @description Eggs that hatched; no more than were laid or fertile. */
            hatched?: number | null;
            /**
             * @description When they hatched; not before it was laid. Left out, the water is reckoned from the laying. EDTF level 1: 2021-04-12, 2021-04, 1994~, 199X, 1993/1996.
             * @example 2021-04-12
             */
            hatchedOn?: string | null;
            /** @description Young that left the water; no more than hatched. */
            outOfWater?: number | null;
            /** @description Losses by cause. */
            losses?: components["schemas"]["LossRequest"][];
            /** @description Where it was laid. */
            site?: string | null;
            /** @description Notes. */
            notes?: string | null;
            /** @description Candidate sires; an empty list says that nothing is known. */
            sires?: components["schemas"]["CandidateRequest"][];
            /** @description Candidate dams; an empty list says that nothing is known. */
            dams?: components["schemas"]["CandidateRequest"][];
            /** @description Candidate pairs instead of sires and dams, where sexes are not known. */
            pairs?: components["schemas"]["CandidatePairRequest"][];
            /** @description Whether the parents come from the housing and follow its corrections. true without parents named: take them anew from the animals that the pairing housed when it was laid. true with parents named, all at equal odds without a reason: they came from the housing as it was recorded before. false: they are the keeper's own choice. Left out, it is found by comparing. */
            parentsFromPairing?: boolean;
        };
        OffspringView: {
            /** @description The new animals, by number. */
            items: components["schemas"]["IndividualItemView"][];
            /** @description Their figures, in the same order. */
            figures?: components["schemas"]["YoungFiguresView"][];
        };
        ObservationView: {
            /**
             * Format: uuid
             * @description Id of the record.
             */
            id: string;
            /** @description Counts the changes of the record from 1; also its ETag. */
            version: number;
            /**
             * Format: date-time
             * @description When it was entered, RFC 3339 in UTC.
             */
            createdAt: string;
            /**
             * Format: date-time
             * @description When it was last changed, RFC 3339 in UTC.
             */
            updatedAt: string;
            /** @description Set when the record was withdrawn; null while it stands. */
            withdrawn: components["schemas"]["WithdrawnView"] | null;
            /** @description Name of the keeper who entered it; null where a stranger asks. */
            keeper: string | null;
            /**
             * Format: uuid
             * @description Id of that keeper; null where a stranger asks.
             */
            keeperId: string | null;
            /**
             * Format: uuid
             * @description The animal that it is about.
             */
            individualId: string | null;
            /**
             * Format: uuid
             * @description The pairing that it is about.
             */
            pairingId: string | null;
            /**
             * Format: uuid
             * @description The clutch that it is about.
             */
            clutchId: string | null;
            /**
             * Format: uuid
             * @description The source that it is about.
             */
            sourceId: string | null;
            /**
             * @description Kind of remark.
             * @enum {string}
             */
            kind: "note" | "measurement" | "health" | "behaviour";
            /** @description When it was observed, EDTF. */
            observedOn: string | null;
            /** @description What was observed. */
            text: string | null;
            /** @description Snout-vent length in millimetres. */
            svlMm: number | null;
            /** @description Mass in grams. */
            massG: number | null;
            /**
             * @description Who may see it: private: its keeper and the registrars (a remark: its keeper alone; an animal besides: keepers who gave it, and one to whom it is on offer); club: every member; public: anyone, where the club allows it.
             * @enum {string}
             */
            visibility: "private" | "club" | "public";
        };
        NewObservationRequest: {
            /**
             * Format: uuid
             * @description The animal that it is about.
             */
            individualId?: string;
            /**
             * Format: uuid
             * @description The pairing that it is about.
             */
            pairingId?: string;
            /**
             * Format: uuid
             * @description The clutch that it is about.
             */
            clutchId?: string;
            /**
             * Format: uuid
             * @description The source that it is about.
             */
            sourceId?: string;
            /**
             * @description Kind of remark.
             * @enum {string}
             */
            kind: "note" | "measurement" | "health" | "behaviour";
            /**
             * @description When it was observed. EDTF level 1: 2021-04-12, 2021-04, 1994~, 199X, 1993/1996.
             * @example 2021-04-12
             */
            observedOn: string;
            /** @description What was observed. */
            text?: string | null;
            /** @description Snout-vent length in millimetres. */
            svlMm?: number | null;
            /** @description Mass in grams. */
            massG?: number | null;
            /**
             * @description Who may see it; club if left out. A private remark is seen by its keeper alone.
             * @enum {string}
             */
            visibility?: "private" | "club" | "public";
        };
        ObservationChangeRequest: {
            /**
             * @description Kind of remark.
             * @enum {string}
             */
            kind?: "note" | "measurement" | "health" | "behaviour";
            /**
             * @description When it was observed. EDTF level 1: 2021-04-12, 2021-04, 1994~, 199X, 1993/1996.
             * @example 2021-04-12
             */
            observedOn?: string;
            /** @description What was observed. */
            text?: string | null;
            /** @description Snout-vent length in millimetres. */
            svlMm?: number | null;
            /** @description Mass in grams. */
            massG?: number | null;
            /**
             * @description Who may see it; club if left out. A private remark is seen by its keeper alone.
             * @enum {string}
             */
            visibility?: "private" | "club" | "public";
        };
        ConfirmationRequest: {
            /** @description Why it is right all the same, 1 to 500 characters. */
            reason: string;
        };
        ComparedFieldView: {
            /**
             * @description The field, as `take` names it.
             * @enum {string}
             */
            field: "code" | "line" | "sex" | "origin" | "hatched" | "outOfWater" | "status" | "visibility" | "keeper" | "notes";
            /** @description What the record says that would go on. */
            kept: string | null;
            /** @description What the duplicate says. */
            duplicate: string | null;
            /** @description Whether they differ. */
            isDifferent: boolean;
        };
        MovedCountsView: {
            /** @description Clutches that name it as a possible parent. */
            clutches: number;
            /** @description Stays in pairings. */
            stays: number;
            /** @description Remarks, those of others that only they may see among them. */
            remarks: number;
            /** @description Confirmed warnings. */
            confirmations: number;
            /** @description Records that were merged into it before. */
            records: number;
            /** @description Claims about the animal; one that both have goes on as one, with the evidence of both. */
            claims: number;
            /** @description Photographs. */
            photographs: number;
            /** @description Acknowledged flags. */
            acknowledgements: number;
        };
        ObstacleRecordView: {
            /**
             * @description Kind of record.
             * @enum {string}
             */
            kind: "clutch" | "pairing";
            /**
             * Format: uuid
             * @description Id of the record.
             */
            id: string;
            /** @description What people call it. */
            name: string;
        };
        ObstacleView: {
            /**
             * @description What it is. one-clutch: both are candidates of one clutch; origin: both have one, and not the same.
             * @enum {string}
             */
            code: "species" | "sex" | "role" | "ancestor" | "pair-of-both" | "both-sides" | "stays" | "one-clutch" | "origin" | "keeper" | "visibility";
            /** @description Whether merging is refused while it stands; else it is there to be thought of. */
            blocks: boolean;
            /** @description What stands against it, and what to do, in words. */
            detail: string;
            /** @description The records that it is about. */
            records: components["schemas"]["ObstacleRecordView"][];
        };
        MergeComparisonView: {
            /** @description The record that would go on. */
            kept: components["schemas"]["IndividualView"];
            /** @description The record that would be withdrawn in its favour. */
            duplicate: components["schemas"]["IndividualView"];
            /** @description The clutch of the kept record with its parents. */
            keptClutch: components["schemas"]["ClutchItemView"] | null;
            /** @description The clutch of the duplicate with its parents. */
            duplicateClutch: components["schemas"]["ClutchItemView"] | null;
            /** @description Every field that can be taken from either, in words. */
            fields: components["schemas"]["ComparedFieldView"][];
            /** @description What would move. */
            moves: components["schemas"]["MovedCountsView"];
            /** @description What stands against it, what refuses it first. */
            obstacles: components["schemas"]["ObstacleView"][];
        };
        MergeRequest: {
            /**
             * Format: uuid
             * @description The record that goes on.
             */
            keptId: string;
            /**
             * Format: uuid
             * @description The record that is withdrawn in its favour.
             */
            duplicateId: string;
            /** @description Fields that the kept record takes over from the duplicate; the others stay as they are. sex is its basis and date too, origin the source or clutch, status the date of death too. */
            take: ("code" | "line" | "sex" | "origin" | "hatched" | "outOfWater" | "status" | "visibility" | "keeper" | "notes")[];
            /** @description Why they are one animal, 1 to 500 characters; it stays with both records. */
            reason: string;
            /** @description Version of the kept record that was compared; 412 where it was changed since. Left out: any. */
            keptVersion?: number;
            /** @description Version of the duplicate that was compared; 412 where it was changed since. Left out: any. */
            duplicateVersion?: number;
        };
        MergedRecordView: {
            /**
             * Format: uuid
             * @description Id of the record.
             */
            id: string;
            /**
             * @description Registry number; it stays that of this record.
             * @example 10704-4
             */
            number: string;
            /** @description The keeper's own code. */
            code: string | null;
        };
        MergeView: {
            /**
             * Format: uuid
             * @description Id of the merging.
             */
            id: string;
            /** @description The record that goes on. */
            kept: components["schemas"]["MergedRecordView"];
            /** @description The record that was withdrawn in its favour. */
            duplicate: components["schemas"]["MergedRecordView"];
            /** @description What the kept record took over. */
            taken: ("code" | "line" | "sex" | "origin" | "hatched" | "outOfWater" | "status" | "visibility" | "keeper" | "notes")[];
            /** @description What moved. */
            moved: components["schemas"]["MovedCountsView"];
            /** @description Why. */
            reason: string;
            /** @description Name of the registrar who merged them. */
            keeper: string;
            /**
             * Format: date-time
             * @description When, RFC 3339 in UTC.
             */
            createdAt: string;
            /**
             * Format: date-time
             * @description When it was undone; null while it stands.
             */
            undoneAt: string | null;
        };
        PlaceView: {
            /** @description The words of the label, list or invoice, unaltered (verbatimLocality); null where a stranger asks. */
            verbatimLocality: string | null;
            /** @description The place in words of today (locality); null where a stranger asks. */
            locality: string | null;
            /** @description Country, ISO 3166-1 code of two letters (countryCode). */
            countryCode: string | null;
            /** @description Province or state (stateProvince). */
            stateProvince: string | null;
            /** @description Latitude in degrees, south negative (decimalLatitude). */
            decimalLatitude: number | null;
            /** @description Longitude in degrees, west negative (decimalLongitude). */
            decimalLongitude: number | null;
            /** @description Datum or EPSG code of the coordinates (geodeticDatum). */
            geodeticDatum: string | null;
            /** @description Radius in metres of the smallest circle that holds the whole place (coordinateUncertaintyInMeters); never 0. */
            coordinateUncertaintyM: number | null;
            /** @description Who found the coordinates (georeferencedBy); null where a stranger asks. */
            georeferencedBy: string | null;
            /** @description By which maps or papers (georeferenceSources); null where a stranger asks. */
            georeferenceSources: string | null;
            /** @description How the place was made coarser for whoever asks (dataGeneralizations); null where it was not. */
            dataGeneralizations: string | null;
            /** @description What is held back from whoever asks (informationWithheld); null where nothing is. */
            informationWithheld: string | null;
        };
        ClaimStandingView: {
            /**
             * @description How well it stands by its accepted evidence; computed, never typed.
             * @enum {string}
             */
            standing: "documented" | "corroborated" | "stated" | "by-looks" | "disputed";
            /** @description Why, in words, such as "documented, because …". */
            because: string;
            /** @description What would let it stand better; null where nothing would. */
            raisedBy: string | null;
            /** @description Ids of the evidence that decides it. */
            decidedBy: string[];
        };
        EvidenceCountsView: {
            /** @description Evidence that waits for a review. */
            pending: number;
            /** @description Evidence that counts. */
            accepted: number;
            /** @description Evidence that was turned down. */
            rejected: number;
        };
        ClaimView: {
            /**
             * Format: uuid
             * @description Id of the record.
             */
            id: string;
            /** @description Counts the changes of the record from 1; also its ETag. */
            version: number;
            /**
             * Format: date-time
             * @description When it was entered, RFC 3339 in UTC.
             */
            createdAt: string;
            /**
             * Format: date-time
             * @description When it was last changed, RFC 3339 in UTC.
             */
            updatedAt: string;
            /** @description Set when the record was withdrawn; null while it stands. */
            withdrawn: components["schemas"]["WithdrawnView"] | null;
            /** @description Name of the keeper who entered it; null where a stranger asks. */
            keeper: string | null;
            /**
             * Format: uuid
             * @description Id of that keeper; null where a stranger asks.
             */
            keeperId: string | null;
            /**
             * Format: uuid
             * @description The source that it is about.
             */
            sourceId: string | null;
            /**
             * Format: uuid
             * @description The line that it is about.
             */
            lineId: string | null;
            /**
             * Format: uuid
             * @description The animal that it is about.
             */
            individualId: string | null;
            /**
             * @description Whether it names a place or only a trade name.
             * @enum {string}
             */
            aspect: "locality" | "trade-name";
            /** @description The label that it claims: the name of the place, or the trade name. */
            value: string;
            /** @description Whose word it is (locationAccordingTo); null where a stranger asks. */
            statedBy: string | null;
            /** @description When it was stated, EDTF. */
            statedOn: string | null;
            /** @description The place, in the terms of Darwin Core. */
            place: components["schemas"]["PlaceView"];
            /** @description Notes; null where a stranger asks. */
            notes: string | null;
            /** @description How well it stands. */
            standing: components["schemas"]["ClaimStandingView"];
            /** @description What looks wrong with its place and may yet be right, such as coordinates in another country than the one that it names; for members. */
            warnings: string[];
            /** @description Its evidence, counted. */
            evidence: components["schemas"]["EvidenceCountsView"];
        };
        NewClaimRequest: {
            /**
             * Format: uuid
             * @description The source that it is about.
             */
            sourceId?: string;
            /**
             * Format: uuid
             * @description The line that it is about.
             */
            lineId?: string;
            /**
             * Format: uuid
             * @description The animal that it is about.
             */
            individualId?: string;
            /**
             * @description Whether it names a place or only a trade name.
             * @enum {string}
             */
            aspect: "locality" | "trade-name";
            /** @description The label that it claims: the name of the place, or the trade name. */
            value: string;
            /** @description Whose word it is (Darwin Core locationAccordingTo). */
            statedBy?: string | null;
            /**
             * @description When it was stated. EDTF level 1: 2021-04-12, 2021-04, 1994~, 199X, 1993/1996.
             * @example 2021-04-12
             */
            statedOn?: string | null;
            /** @description The place exactly as it stood on the label, list or invoice (Darwin Core verbatimLocality). It is never changed afterwards: a slip of the pen is a new claim. */
            verbatimLocality?: string | null;
            /** @description The place in words of today (Darwin Core locality). */
            locality?: string | null;
            /**
             * @description Country of the place, ISO 3166-1 code of two letters (Darwin Core countryCode).
             * @example EC
             */
            countryCode?: string | null;
            /** @description Province or state (Darwin Core stateProvince). */
            stateProvince?: string | null;
            /** @description Latitude in degrees, south negative (Darwin Core decimalLatitude); with longitude and datum. */
            decimalLatitude?: number | null;
            /** @description Longitude in degrees, west negative (Darwin Core decimalLongitude); with latitude and datum. */
            decimalLongitude?: number | null;
            /**
             * @description Datum or EPSG code of the coordinates, or "not recorded" (Darwin Core geodeticDatum).
             * @example EPSG:4326
             */
            geodeticDatum?: string | null;
            /** @description Radius in metres of the smallest circle that holds the whole place (Darwin Core coordinateUncertaintyInMeters); leave it out where it is not known. */
            coordinateUncertaintyM?: number | null;
            /** @description Who found the coordinates (Darwin Core georeferencedBy). */
            georeferencedBy?: string | null;
            /** @description By which maps or papers (Darwin Core georeferenceSources). */
            georeferenceSources?: string | null;
            /** @description Notes. */
            notes?: string | null;
        };
        ClaimChangeRequest: {
            /**
             * @description Whether it names a place or only a trade name.
             * @enum {string}
             */
            aspect?: "locality" | "trade-name";
            /** @description The label that it claims: the name of the place, or the trade name. */
            value?: string;
            /** @description Whose word it is (Darwin Core locationAccordingTo). */
            statedBy?: string | null;
            /**
             * @description When it was stated. EDTF level 1: 2021-04-12, 2021-04, 1994~, 199X, 1993/1996.
             * @example 2021-04-12
             */
            statedOn?: string | null;
            /** @description The place in words of today (Darwin Core locality). */
            locality?: string | null;
            /**
             * @description Country of the place, ISO 3166-1 code of two letters (Darwin Core countryCode).
             * @example EC
             */
            countryCode?: string | null;
            /** @description Province or state (Darwin Core stateProvince). */
            stateProvince?: string | null;
            /** @description Latitude in degrees, south negative (Darwin Core decimalLatitude); with longitude and datum. */
            decimalLatitude?: number | null;
            /** @description Longitude in degrees, west negative (Darwin Core decimalLongitude); with latitude and datum. */
            decimalLongitude?: number | null;
            /**
             * @description Datum or EPSG code of the coordinates, or "not recorded" (Darwin Core geodeticDatum).
             * @example EPSG:4326
             */
            geodeticDatum?: string | null;
            /** @description Radius in metres of the smallest circle that holds the whole place (Darwin Core coordinateUncertaintyInMeters); leave it out where it is not known. */
            coordinateUncertaintyM?: number | null;
            /** @description Who found the coordinates (Darwin Core georeferencedBy). */
            georeferencedBy?: string | null;
            /** @description By which maps or papers (Darwin Core georeferenceSources). */
            georeferenceSources?: string | null;
            /** @description Notes. */
            notes?: string | null;
        };
        EvidenceFileView: {
            /** @description SHA-256 of its bytes, hexadecimal. */
            hash: string;
            /** @description Media type, found by its content. */
            mediaType: string;
            /** @description Size in bytes. */
            bytes: number;
        };
        ReviewView: {
            /** @description Name of the registrar. */
            reviewer: string;
            /**
             * Format: date-time
             * @description When, RFC 3339 in UTC.
             */
            at: string;
            /** @description Why. */
            reason: string;
        };
        EvidenceView: {
            /**
             * Format: uuid
             * @description Id of the record.
             */
            id: string;
            /** @description Counts the changes of the record from 1; also its ETag. */
            version: number;
            /**
             * Format: date-time
             * @description When it was entered, RFC 3339 in UTC.
             */
            createdAt: string;
            /**
             * Format: date-time
             * @description When it was last changed, RFC 3339 in UTC.
             */
            updatedAt: string;
            /** @description Set when the record was withdrawn; null while it stands. */
            withdrawn: components["schemas"]["WithdrawnView"] | null;
            /** @description Name of the keeper who brought it. */
            keeper: string;
            /**
             * Format: uuid
             * @description Id of that keeper.
             */
            keeperId: string;
            /**
             * Format: uuid
             * @description The claim that it bears on.
             */
            claimId: string;
            /** @description What that claim says. */
            claim: string;
            /**
             * @description Whether it supports the claim or contradicts it.
             * @enum {string}
             */
            bearing: "supports" | "contradicts";
            /**
             * @description Kind of evidence.
             * @enum {string}
             */
            kind: "collecting-permit" | "export-permit" | "field-note" | "publication" | "importers-list" | "invoice" | "letter" | "other-document" | "appearance";
            /**
             * @description How near it stands to what it tells of.
             * @enum {string}
             */
            rank: "primary" | "secondary" | "appearance";
            /**
             * @description Whether it names what the claim says, or only the country of export.
             * @enum {string}
             */
            names: "claim" | "country";
            /** @description Number, title or first words by which the document is found again. */
            reference: string;
            /** @description Who issued it. */
            issuedBy: string | null;
            /** @description When it was issued, EDTF. */
            dated: string | null;
            /**
             * Format: uuid
             * @description Evidence that it only repeats.
             */
            repeatsId: string | null;
            /** @description Its file; null where none was given. */
            file: components["schemas"]["EvidenceFileView"] | null;
            /** @description Notes. */
            notes: string | null;
            /**
             * @description Whether it was reviewed, and how: only what is accepted counts.
             * @enum {string}
             */
            review: "pending" | "accepted" | "rejected";
            /** @description The review; null while it waits for one. */
            reviewed: components["schemas"]["ReviewView"] | null;
        };
        NewEvidenceRequest: {
            /**
             * Format: uuid
             * @description The claim that it bears on.
             */
            claimId: string;
            /**
             * @description Whether it supports the claim or contradicts it.
             * @enum {string}
             */
            bearing: "supports" | "contradicts";
            /**
             * @description Kind of evidence. Primary: collecting-permit, export-permit, field-note, publication; secondary: importers-list, invoice, letter, other-document; appearance: a look at the animals.
             * @enum {string}
             */
            kind: "collecting-permit" | "export-permit" | "field-note" | "publication" | "importers-list" | "invoice" | "letter" | "other-document" | "appearance";
            /**
             * @description What it names: claim (what the claim says; if left out) or country (only the country of export, which carries no place).
             * @enum {string}
             */
            names?: "claim" | "country";
            /** @description Number, title or first words by which the document is found again. */
            reference: string;
            /** @description Who issued it. Two secondary documents are independent only if different people issued them. */
            issuedBy?: string | null;
            /**
             * @description When it was issued. EDTF level 1: 2021-04-12, 2021-04, 1994~, 199X, 1993/1996.
             * @example 2021-04-12
             */
            dated?: string | null;
            /**
             * Format: uuid
             * @description Evidence of the same claim that it only repeats: together they count once.
             */
            repeatsId?: string | null;
            /** @description Notes. */
            notes?: string | null;
        };
        EvidenceChangeRequest: {
            /**
             * @description Whether it supports the claim or contradicts it.
             * @enum {string}
             */
            bearing?: "supports" | "contradicts";
            /**
             * @description Kind of evidence. Primary: collecting-permit, export-permit, field-note, publication; secondary: importers-list, invoice, letter, other-document; appearance: a look at the animals.
             * @enum {string}
             */
            kind?: "collecting-permit" | "export-permit" | "field-note" | "publication" | "importers-list" | "invoice" | "letter" | "other-document" | "appearance";
            /**
             * @description What it names: claim (what the claim says; if left out) or country (only the country of export, which carries no place).
             * @enum {string}
             */
            names?: "claim" | "country";
            /** @description Number, title or first words by which the document is found again. */
            reference?: string;
            /** @description Who issued it. Two secondary documents are independent only if different people issued them. */
            issuedBy?: string | null;
            /**
             * @description When it was issued. EDTF level 1: 2021-04-12, 2021-04, 1994~, 199X, 1993/1996.
             * @example 2021-04-12
             */
            dated?: string | null;
            /**
             * Format: uuid
             * @description Evidence of the same claim that it only repeats: together they count once.
             */
            repeatsId?: string | null;
            /** @description Notes. */
            notes?: string | null;
        };
        ReviewRequest: {
            /**
             * @description accepted: it counts; rejected: it does not.
             * @enum {string}
             */
            verdict: "accepted" | "rejected";
            /** @description Why, for everybody to read. */
            reason: string;
        };
        PhotographRecordView: {
            /**
             * Format: uuid
             * @description Id of the record.
             */
            id: string;
            /** @description Counts the changes of the record from 1; also its ETag. */
            version: number;
            /**
             * Format: date-time
             * @description When it was entered, RFC 3339 in UTC.
             */
            createdAt: string;
            /**
             * Format: date-time
             * @description When it was last changed, RFC 3339 in UTC.
             */
            updatedAt: string;
            /** @description Set when the record was withdrawn; null while it stands. */
            withdrawn: components["schemas"]["WithdrawnView"] | null;
            /** @description Name of the keeper who entered it; null where a stranger asks. */
            keeper: string | null;
            /**
             * Format: uuid
             * @description Id of that keeper; null where a stranger asks.
             */
            keeperId: string | null;
            /**
             * Format: uuid
             * @description The animal that it shows.
             */
            individualId: string;
            /**
             * @description The side of the animal that it shows.
             * @enum {string}
             */
            view: "back" | "side" | "belly" | "other";
            /** @description When it was taken, EDTF; null where nobody knows. */
            takenOn: string | null;
            /** @description What else is known of it; null where a stranger asks, since it may name people or places. */
            notes: string | null;
            /** @description Width of the whole picture, pixels. */
            width: number;
            /** @description Height of the whole picture, pixels. */
            height: number;
        };
        PhotographForm: {
            /**
             * Format: uuid
             * @description The animal that it shows.
             */
            individualId: string;
            /**
             * @description The side of the animal that it shows.
             * @enum {string}
             */
            view: "back" | "side" | "belly" | "other";
            /**
             * @description When it was taken. EDTF level 1: 2021-04-12, 2021-04, 1994~, 199X, 1993/1996.
             * @example 2021-04-12
             */
            takenOn?: string | null;
            /** @description What else is known of it. */
            notes?: string | null;
            /**
             * Format: binary
             * @description The picture: JPEG, PNG, WebP or AVIF.
             */
            file: string;
        };
        PhotographChangeRequest: {
            /**
             * @description The side of the animal that it shows.
             * @enum {string}
             */
            view?: "back" | "side" | "belly" | "other";
            /**
             * @description When it was taken. EDTF level 1: 2021-04-12, 2021-04, 1994~, 199X, 1993/1996.
             * @example 2021-04-12
             */
            takenOn?: string | null;
            /** @description What else is known of it. */
            notes?: string | null;
        };
        ClaimedPlaceView: {
            /**
             * Format: uuid
             * @description Id of the claim.
             */
            claimId: string;
            /**
             * @description The label that it claims.
             * @example Quebrada Honda
             */
            value: string;
            /**
             * @description What the claim is about.
             * @enum {string}
             */
            about: "source" | "line" | "individual";
            /**
             * Format: uuid
             * @description Id of what it is about.
             */
            aboutId: string;
            /**
             * @description What that is called.
             * @example Import, about 1994
             */
            aboutTitle: string;
            /**
             * @description How well the claim stands by its accepted evidence.
             * @enum {string}
             */
            standing: "documented" | "corroborated" | "stated" | "by-looks" | "disputed";
            /** @description How many founders it speaks of, of those that whoever asks may see: the animals of the source, those of the line that came from a source, or the one animal. */
            founders: number;
            /** @description The place; for a stranger generalised to a cell of 0.1 degree or coarser. It has coordinates, or at least a country. */
            place: components["schemas"]["PlaceView"];
        };
        PlacesView: {
            /** @description The places. */
            items: components["schemas"]["ClaimedPlaceView"][];
            /** @description How many match in all. */
            total: number;
            /** @description Whether coordinates and words are generalised for whoever asks. */
            isGeneralised: boolean;
        };
        PresentLabelView: {
            /**
             * @description Name of the line.
             * @example Quebrada Honda
             */
            name: string;
            /**
             * @description What kind of label it is.
             * @enum {string}
             */
            kind: "locality" | "trade-name" | "cross" | "unlabelled";
        };
        HistoryRecordView: {
            /**
             * @description Kind of record.
             * @enum {string}
             */
            kind: "individual" | "line" | "source" | "claim" | "evidence";
            /**
             * Format: uuid
             * @description Its id.
             */
            id: string;
            /**
             * @description What it is called.
             * @example Import, about 1994
             */
            title: string;
        };
        LabelEventView: {
            /**
             * @description What happened: received: it came under this label; entered: it was entered into the register under it; line-changed: it was put into another line; line-renamed: its line got another name; claimed, claim-changed, claim-withdrawn: somebody’s claim; evidence-…: a registrar’s verdict, or that it was withdrawn.
             * @enum {string}
             */
            event: "received" | "entered" | "line-changed" | "line-renamed" | "claimed" | "claim-changed" | "claim-withdrawn" | "evidence-accepted" | "evidence-rejected" | "evidence-withdrawn";
            /** @description When: EDTF, a calendar day in UTC for what happened in the register; null where it is not recorded. */
            date: string | null;
            /**
             * Format: date-time
             * @description The instant, RFC 3339 in UTC, of what happened in the register; null for what happened before.
             */
            at: string | null;
            /** @description Who did or said it; null where it is not known, and where a stranger asks. */
            who: string | null;
            /** @description The label after it, or the one that a claim or its evidence speaks of; null for none. */
            label: string | null;
            /** @description The label before it, of a change; else null. */
            before: string | null;
            /** @description Why, as far as a reason was given; null where a stranger asks. */
            reason: string | null;
            /** @description The record that it is about. */
            record: components["schemas"]["HistoryRecordView"];
        };
        LabelHistoryView: {
            /** @description The label of today; null where it is in no line. */
            present: components["schemas"]["PresentLabelView"] | null;
            /** @description What happened to its label, the oldest first. */
            events: components["schemas"]["LabelEventView"][];
            /** @description Whether there are more events than are told here. */
            isCut: boolean;
        };
        AcknowledgementView: {
            /**
             * Format: uuid
             * @description Id of the record.
             */
            id: string;
            /** @description Counts the changes of the record from 1; also its ETag. */
            version: number;
            /**
             * Format: date-time
             * @description When it was entered, RFC 3339 in UTC.
             */
            createdAt: string;
            /**
             * Format: date-time
             * @description When it was last changed, RFC 3339 in UTC.
             */
            updatedAt: string;
            /** @description Set when the record was withdrawn; null while it stands. */
            withdrawn: components["schemas"]["WithdrawnView"] | null;
            /** @description Name of the keeper who entered it; null where a stranger asks. */
            keeper: string | null;
            /**
             * Format: uuid
             * @description Id of that keeper; null where a stranger asks.
             */
            keeperId: string | null;
            /**
             * Format: uuid
             * @description The animal whose flag it is; null where it is the flag of a line.
             */
            individualId: string | null;
            /**
             * Format: uuid
             * @description The line whose flag it is; null where it is the flag of an animal.
             */
            lineId: string | null;
            /**
             * @description The flag.
             * @enum {string}
             */
            code: "disputed-claim" | "mixed-labels" | "outside-line" | "label-changed" | "label-beyond-evidence" | "outside-range" | "export-route" | "date-conflict" | "origin-gap" | "country-only" | "parents-uncertain";
            /** @description Why it may stay. */
            reason: string;
            /** @description How many records caused the flag when it was acknowledged, the first 50 counted. */
            causes: number;
        };
        AnimalRef: {
            /** @description Id of the individual; "private-1" and so on, numbered within the answer, where it may not be seen. */
            id: string;
            /**
             * @description Registry number; null where it may not be seen.
             * @example 10704-4
             */
            number: string | null;
            /** @description The keeper's own code. */
            code: string | null;
            /**
             * @description Sex as recorded; unsexed where it may not be seen.
             * @enum {string}
             */
            sex: "male" | "female" | "unsexed";
            /** @description Whether it is a private animal that whoever asks may not see. */
            isPrivate: boolean;
        };
        PairView: {
            /** @description One parent: the sire where sexes are recorded. Null: a frog nobody knows. */
            a: components["schemas"]["AnimalRef"] | null;
            /** @description The other parent: the dam where sexes are recorded. Null: a frog nobody knows. */
            b: components["schemas"]["AnimalRef"] | null;
            /** @description Probability that these two are the parents, above 0, at most 1. */
            probability: number;
            /** @description Expected kinship of the two, 0 to 1 (Malécot 1948): the inbreeding coefficient of their young. */
            kinship: number;
        };
        InbreedingView: {
            /** @description Expected inbreeding coefficient F over the candidate pairs, 0 to 1, without unit (Wright 1922). */
            expected: number;
            /** @description F if the least related candidate pair are the parents, 0 to 1. */
            least: number;
            /** @description F if the most related candidate pair are the parents, 0 to 1. */
            greatest: number;
            /** @description True where F rests on nothing: neither a source nor any known parent is recorded. Show "nothing known" then, never 0. */
            nothingKnown: boolean;
            /** @description Probability that both parents are recorded animals, 0 to 1. The rest counts as F = 0 for want of knowledge; 0 for an animal without a clutch. */
            bothParentsKnown: number;
            /** @description The candidate parent pairs, the likeliest 50; empty for an animal without a recorded clutch. */
            pairs: components["schemas"]["PairView"][];
        };
        CompletenessView: {
            /** @description How many generations were looked at. */
            generations: number;
            /** @description Completeness index over these generations, 0 to 1 (MacCluer et al. 1983). */
            index: number;
        };
        LineKinshipView: {
            /** @description Mean of all kinships among the living animals of the line, 0 to 1 (Ballou & Lacy 1995). */
            mean: number;
            /** @description How many living animals the line has. */
            living: number;
            /** @description Place of the animal among them, the one with the rarest genes (least mean kinship) first; equals share a place. Null for an animal that does not live. */
            rank: number | null;
        };
        StandingShareView: {
            /**
             * @description How well the label of those founders stands, by rule.
             * @enum {string}
             */
            standing: "documented" | "corroborated" | "stated" | "by-looks" | "disputed" | "unknown";
            /** @description Expected share of the genome from founders of this standing, above 0, at most 1; the shares sum to 1. */
            share: number;
        };
        TracedShareView: {
            /** @description Expected share of the genome from founders of which a claim names the animal's label and stands corroborated or better, 0 to 1. */
            expected: number;
            /** @description The least that this share can be, however the candidate parents turn out, 0 to 1. */
            least: number;
        };
        OtherLabelView: {
            /** @description The label as received; case and spaces do not make a label another. Null: the labels of private sources together. */
            label: string | null;
            /** @description Expected share of the genome from founders that came under it, above 0, at most 1. */
            share: number;
        };
        NamedRecordView: {
            /**
             * @description What kind of record it is.
             * @enum {string}
             */
            kind: "individual" | "clutch" | "source" | "line";
            /** @description Its id; "private-1" and so on where it may not be seen. */
            id: string;
            /** @description What it is called: code and registry number of an animal, title of a clutch or source, name of a line. */
            name: string;
            /** @description Whether it is a private record that whoever asks may not see. */
            isPrivate: boolean;
        };
        AcknowledgedView: {
            /**
             * Format: uuid
             * @description Id of the acknowledgement.
             */
            id: string;
            /** @description Its version, to withdraw it by (If-Match). */
            version: number;
            /** @description Name of the registrar; null where a stranger asks. */
            by: string | null;
            /**
             * Format: date-time
             * @description When, RFC 3339 in UTC.
             */
            at: string;
            /** @description Why the flag may stay; null where a stranger asks, since it may name people or places. */
            reason: string | null;
            /** @description Whether a record causes the flag now that did not when it was acknowledged: what was said was not said of that one. Null where more records cause it than are compared, 50. */
            otherCauses: boolean | null;
        };
        FlagView: {
            /**
             * @description Which rule raised it.
             * @enum {string}
             */
            code: "disputed-claim" | "mixed-labels" | "outside-line" | "label-changed" | "label-beyond-evidence" | "outside-range" | "export-route" | "date-conflict" | "origin-gap" | "country-only" | "parents-uncertain";
            /**
             * @description What it does to the label.
             * @enum {string}
             */
            severity: "breaks" | "weakens" | "worth-knowing";
            /** @description What was found, in a plain sentence. */
            detail: string;
            /** @description The records that caused it, those with the largest shares first, at most 50. */
            records: components["schemas"]["NamedRecordView"][];
            /** @description What would clear it, in a plain sentence. */
            clearedBy: string;
            /** @description That a registrar acknowledged this flag of this animal, and why; the flag stays as grave as it is. Null where nobody did, and of young that are only planned. */
            acknowledged: components["schemas"]["AcknowledgedView"] | null;
        };
        LabelView: {
            /** @description The label: the name of its line. Null without a line. */
            name: string | null;
            /**
             * @description The kind of label, from the line.
             * @enum {string|null}
             */
            kind: "locality" | "trade-name" | "cross" | "unlabelled" | null;
            /**
             * @description The weakest standing that carries a share of the genome.
             * @enum {string}
             */
            standing: "documented" | "corroborated" | "stated" | "by-looks" | "disputed" | "unknown";
            /** @description Expected genome shares by standing, best first; they sum to 1. */
            shares: components["schemas"]["StandingShareView"][];
            /** @description How much of the animal is traced to founders that carry its label on paper. */
            tracedShare: components["schemas"]["TracedShareView"];
            /** @description Labels of founders that differ from its own, the largest share first. */
            otherLabels: components["schemas"]["OtherLabelView"][];
            /** @description What the audit holds against the label, the gravest first. */
            flags: components["schemas"]["FlagView"][];
        };
        ShareSourceView: {
            /** @description Id of the source; "private-source-1" and so on where it may not be seen. */
            id: string;
            /** @description Whether it is a private source that whoever asks may not see. */
            isPrivate: boolean;
            /**
             * @description What it is called.
             * @example Import, about 1994
             */
            title: string;
            /**
             * @description How well these founders of it stand, by rule, under the label asked about, by their own best where none is; a source is named more than once where some of its founders stand otherwise by claims of their own. Unknown where it may not be seen.
             * @enum {string}
             */
            standing: "documented" | "corroborated" | "stated" | "by-looks" | "disputed" | "unknown";
            /** @description The label it was received under. */
            label: string | null;
        };
        ShareClutchView: {
            /** @description Id of the clutch; "private-clutch-1" and so on where it may not be seen. */
            id: string;
            /** @description Whether it is a private clutch that whoever asks may not see. */
            isPrivate: boolean;
            /**
             * @description What it is called.
             * @example clutch of 2021-04-12
             */
            title: string;
        };
        ShareView: {
            /** @description The source that the founders came from. */
            source?: components["schemas"]["ShareSourceView"];
            /** @description A founder of unknown origin. */
            founder?: components["schemas"]["AnimalRef"];
            /** @description The clutch of which a parent is unknown. */
            unknownParentOf?: components["schemas"]["ShareClutchView"];
            /**
             * @description How well it stands, by rule, under the label asked about: unknown for a parent that nobody knows, for a founder of unknown origin of which nothing is claimed, and for what may not be seen.
             * @enum {string}
             */
            standing: "documented" | "corroborated" | "stated" | "by-looks" | "disputed" | "unknown";
            /** @description Expected share of the genome, above 0, at most 1; all shares sum to 1. */
            share: number;
        };
        AncestralInbreedingView: {
            /** @description Ancestral inbreeding, 0 to 1, without unit: probability that a gene has met a copy of itself before in an inbred ancestor, by the recursion of Ballou (1997), expected over uncertain parents. The recursion takes the history of a gene and the F of its bearer as independent, so the exact value differs. 0 where no ancestor is inbred as far as recorded. */
            recursion: number;
            /** @description The same exactly, 0 to 1, by counting all ways in which genes can have come down. Null where there are more than 4096 ways. */
            exact: number | null;
            /** @description Old inbreeding, 0 to F: the part of F in which a gene has met itself before (after Kalinowski, Hedrick & Miller 2000), counted. Null as `exact`. */
            oldInbreeding: number | null;
            /** @description New inbreeding, 0 to F: the rest of F, genes that meet themselves for the first time. Null as `exact`. */
            newInbreeding: number | null;
        };
        PartialInbreedingView: {
            /** @description The source that the founders came from. */
            source?: components["schemas"]["ShareSourceView"];
            /** @description A founder of unknown origin. */
            founder?: components["schemas"]["AnimalRef"];
            /** @description The clutch of which a parent is unknown. */
            unknownParentOf?: components["schemas"]["ShareClutchView"];
            /**
             * @description How well it stands, by rule, under the label asked about: unknown for a parent that nobody knows, for a founder of unknown origin of which nothing is claimed, and for what may not be seen.
             * @enum {string}
             */
            standing: "documented" | "corroborated" | "stated" | "by-looks" | "disputed" | "unknown";
            /** @description Partial inbreeding, 0 to 1 (Lacy, Alaks & Walsh 1996): probability that both copies of a gene come from one gene of this founder, or through founders of this source that are kin. All parts sum to F. */
            part: number;
        };
        AsOfView: {
            /** @description Revision of the register: grows with every change that can touch a figure. */
            revision: number;
            /**
             * Format: date-time
             * @description When that revision was written, RFC 3339 in UTC.
             */
            at: string;
        };
        LineageView: {
            /** @description Inbreeding coefficient with its range and the candidate pairs. */
            inbreeding: components["schemas"]["InbreedingView"];
            /** @description Generations on the longest recorded path to a founder; 0 for a founder. */
            depth: number;
            /** @description Generations back in which every ancestor is known. */
            fullDepth: number;
            /** @description Complete generation equivalent, in generations: Σ ½ⁿ over known ancestors n generations back (Maignel et al. 1996). */
            generationEquivalents: number;
            /** @description How complete the pedigree is. */
            completeness: components["schemas"]["CompletenessView"] | null;
            /** @description Generations since the wild by the least of the parents (CITES Resolution Conf. 10.16): 0 wild-collected, 1 with one wild parent. Null where it cannot be known. It decides no permit. */
            filialGeneration: number | null;
            /** @description Mean kinship with the living animals of its line, itself included where it lives, 0 to 1 (Ballou & Lacy 1995). Null without a line or without living animals in it. */
            meanKinship: number | null;
            /** @description What the mean kinship is to be compared with; null without a line or without living animals in it. */
            lineKinship: components["schemas"]["LineKinshipView"] | null;
            /** @description The label and how far it can be trusted. */
            label: components["schemas"]["LabelView"];
            /** @description Where the genome is expected to come from, the largest share first. */
            shares: components["schemas"]["ShareView"][];
            /** @description How far its genes have met themselves before. */
            ancestralInbreeding: components["schemas"]["AncestralInbreedingView"];
            /** @description The parts of F by founder or source, the largest first, those of founders of one source together; at most 50, the rest is what is missing from F. Empty where F is 0. */
            partialInbreeding: components["schemas"]["PartialInbreedingView"][];
            /** @description Whether the figures belong to the register as it was when it was asked. Always true so far: an answer waits for its figures. */
            current: boolean;
            /** @description The state of the register that the figures belong to. */
            asOf: components["schemas"]["AsOfView"];
        };
        CommonAncestorView: {
            /** @description The common ancestor. */
            ancestor?: components["schemas"]["AnimalRef"];
            /** @description The clutch of which nobody knows a parent: its young share it, so that it is a common ancestor. */
            unknownParentOf?: components["schemas"]["ShareClutchView"];
            /** @description The source, or the two sources, whose founders count as kin to each other by the base kinship stated. */
            sources?: components["schemas"]["ShareSourceView"][];
            /** @description Its part of F, above 0 to 1, without unit. */
            part: number;
            /** @description Number of loops through it: pairs of paths from the two parents up to it that share no other animal. With uncertain parents every possible one counts. Rounded above 2^53; null above 1.8e308. */
            loops: number | null;
            /** @description Steps of its shortest loop: from one parent up to it and down to the other; 0 would be a parent with itself. */
            shortest: number;
            /** @description Steps of its longest loop. */
            longest: number;
        };
        CommonAncestorsView: {
            /** @description Inbreeding coefficient F, the probability that two alleles at a locus are identical by descent (Wright 1922). */
            inbreeding: number;
            /** @description Whether F could be taken apart. False for a pedigree with more than half a million pairs of ancestors; the list is empty then. */
            isTakenApart: boolean;
            /** @description The common ancestors, the largest part first. */
            ancestors: components["schemas"]["CommonAncestorView"][];
            /** @description How many further common ancestors are not named. */
            others: number;
            /** @description Their part of F together. */
            othersPart: number;
            /** @description Whether these figures follow the newest change; false while they are being recomputed. */
            current: boolean;
            /** @description The state of the register that the figures belong to. */
            asOf: components["schemas"]["AsOfView"];
        };
        LoopStepView: {
            /** @description Id of the animal, as `animals` has it; null for the parent nobody knows that two clutch-mates share. */
            animal: string | null;
            /** @description Id of the clutch that it is a parent of, as `clutches` has it: that of the animal below it. */
            clutch: string;
            /**
             * @description As what; `either` where sexes are not known.
             * @enum {string}
             */
            as: "sire" | "dam" | "either";
            /** @description Probability that it is that parent, above 0, at most 1. */
            probability: number;
            /** @description Where the other side leads through the same clutch: the probability that the animals on both sides are its parents. It counts once, in place of the two; null elsewhere. */
            together: number | null;
        };
        InbreedingLoopView: {
            /** @description Place of its common ancestor in `ancestors`, from 0. */
            commonAncestor: number;
            /** @description What it adds to F: `probability` · ½^`steps` · `kinship` (Wright 1922), above 0, at most 1. */
            part: number;
            /** @description Probability that all animals on it are the parents that they are taken for; 1 where nothing is uncertain. */
            probability: number;
            /** @description Steps from one parent up and down to the other. */
            steps: number;
            /** @description How akin two alleles drawn where it closes are: ½(1+F) of the common ancestor, ½ of one that nobody knows, or the base kinship that sources state. */
            kinship: number;
            /** @description The path up from one parent (the sire where sexes are known), the common ancestor last. Founders that are kin by base kinship end a path each. Empty for a founder. */
            first: components["schemas"]["LoopStepView"][];
            /** @description The path up from the other parent. */
            second: components["schemas"]["LoopStepView"][];
        };
        LoopAncestorView: {
            /** @description The common ancestor. */
            ancestor?: components["schemas"]["AnimalRef"];
            /** @description The clutch of which nobody knows a parent: its young share it, so that it is a common ancestor. */
            unknownParentOf?: components["schemas"]["ShareClutchView"];
            /** @description The source, or the two sources, whose founders count as kin to each other by the base kinship stated. */
            sources?: components["schemas"]["ShareSourceView"][];
            /** @description Its part of F, above 0 to 1, without unit. */
            part: number;
            /** @description Number of loops through it: pairs of paths from the two parents up to it that share no other animal. With uncertain parents every possible one counts. Rounded above 2^53; null above 1.8e308. */
            loops: number | null;
            /** @description Steps of its shortest loop: from one parent up to it and down to the other; 0 would be a parent with itself. */
            shortest: number;
            /** @description Steps of its longest loop. */
            longest: number;
            /** @description How many of its loops are listed. */
            listed: number;
            /** @description How many are left out. Rounded above 2^53; null above 1.8e308. */
            leftOut: number | null;
            /** @description The part of F of those left out together. */
            leftOutPart: number;
        };
        InbreedingLoopsView: {
            /** @description Inbreeding coefficient F, the probability that two alleles at a locus are identical by descent (Wright 1922). It is the sum of all `part` of `loops`, all `leftOutPart` of `ancestors`, and `othersPart`. */
            inbreeding: number;
            /** @description Whether F could be taken apart. False for a pedigree with more than half a million pairs of ancestors; the lists are empty then. */
            isTakenApart: boolean;
            /** @description The loops, the largest part first. Fewer than asked for where there are no more, or where they name 20 000 animals in all. */
            loops: components["schemas"]["InbreedingLoopView"][];
            /** @description Common ancestors, the largest part first. */
            ancestors: components["schemas"]["LoopAncestorView"][];
            /** @description How many further common ancestors are not named. */
            others: number;
            /** @description Their part of F together. */
            othersPart: number;
            /** @description The animals on the loops, each once. */
            animals: components["schemas"]["AnimalRef"][];
            /** @description The clutches that the loops lead through, each once. */
            clutches: components["schemas"]["ShareClutchView"][];
            /** @description Whether these figures follow the newest change; false while they are being recomputed. */
            current: boolean;
            /** @description The state of the register that the figures belong to. */
            asOf: components["schemas"]["AsOfView"];
        };
        IndividualNodeView: {
            /**
             * @description What the node is. (enum property replaced by openapi-typescript)
             * @enum {string}
             */
            kind: "individual";
            /** @description Id of the individual. One that may not be seen is "private-1" and so on, numbered within the answer; then nothing but its place in the graph is told. */
            id: string;
            /** @description Whether it is a private animal that whoever asks may not see. */
            isPrivate: boolean;
            /**
             * @description Registry number; null where it may not be seen.
             * @example 10704-4
             */
            number: string | null;
            /** @description The keeper's own code. */
            code: string | null;
            /**
             * @description Sex as recorded.
             * @enum {string}
             */
            sex: "male" | "female" | "unsexed";
            /**
             * @description Status as recorded.
             * @enum {string}
             */
            status: "alive" | "died" | "gone" | "unknown";
            /** @description Hatching date, EDTF. */
            hatched: string | null;
            /**
             * Format: date
             * @description First calendar day that the hatching date may mean; null where it is open or not given.
             */
            earliest: string | null;
            /**
             * Format: date
             * @description Last calendar day that the hatching date may mean; null where it is open or not given.
             */
            latest: string | null;
            /** @description Name of its line. */
            line: string | null;
            /** @description Scientific name of its species; null where it may not be seen. */
            species: string | null;
            /** @description Whether it has neither a source nor a clutch. */
            unknownOrigin: boolean;
            /** @description Whether its clutch is recorded but lies beyond this chart. */
            hasMoreAncestors: boolean;
            /** @description Whether the record was withdrawn; its young keep it as an ancestor. */
            withdrawn: boolean;
            /** @description Expected genome shares by standing, best first; they sum to 1. Empty where it may not be seen. */
            standings: components["schemas"]["StandingShareView"][];
            /** @description Expected inbreeding coefficient, 0 to 1 (Wright 1922). Null where nothing is known. */
            inbreeding: number | null;
        };
        ChartPairView: {
            /** @description Id of one of the two, as its node has it. */
            a: string;
            /** @description Id of the other, as its node has it. */
            b: string;
            /** @description Probability that these two are the parents, above 0, at most 1. */
            probability: number;
        };
        ClutchNodeView: {
            /**
             * @description What the node is. (enum property replaced by openapi-typescript)
             * @enum {string}
             */
            kind: "clutch";
            /** @description Id of the clutch; "private-clutch-1" and so on where it may not be seen. */
            id: string;
            /** @description Whether it is a private clutch that whoever asks may not see. */
            isPrivate: boolean;
            /**
             * @description What it is called.
             * @example clutch of 2021-04-12
             */
            title: string;
            /** @description Laying date, EDTF. */
            laid: string | null;
            /**
             * Format: date
             * @description First calendar day that the laying date may mean; null where it is open or not given.
             */
            earliest: string | null;
            /**
             * Format: date
             * @description Last calendar day that the laying date may mean; null where it is open or not given.
             */
            latest: string | null;
            /** @description Joint candidate pairs, the likeliest 50, where parents are recorded so; null where sires and dams are listed. */
            pairs: components["schemas"]["ChartPairView"][] | null;
            /** @description Probability that the sire is a frog nobody knows, 0 to 1. */
            unknownSire: number;
            /** @description Probability that the dam is a frog nobody knows, 0 to 1. */
            unknownDam: number;
        };
        SourceNodeView: {
            /**
             * @description What the node is. (enum property replaced by openapi-typescript)
             * @enum {string}
             */
            kind: "source";
            /** @description Id of the source; "private-source-1" and so on where it may not be seen. */
            id: string;
            /** @description Whether it is a private source that whoever asks may not see. */
            isPrivate: boolean;
            /**
             * @description What it is called.
             * @example Import, about 1994
             */
            title: string;
            /**
             * @description Kind of source.
             * @enum {string}
             */
            sourceKind: "import" | "wild-collection" | "purchase" | "unknown";
            /** @description The label it was received under. */
            label: string | null;
            /** @description Date of the source, EDTF. */
            date: string | null;
            /**
             * Format: date
             * @description First calendar day that the date may mean; null where it is open or not given.
             */
            earliest: string | null;
            /**
             * Format: date
             * @description Last calendar day that the date may mean; null where it is open or not given.
             */
            latest: string | null;
            /**
             * @description How well its label stands, by rule.
             * @enum {string}
             */
            standing: "documented" | "corroborated" | "stated" | "by-looks" | "disputed" | "unknown";
            /** @description Assumed kinship of its founders with each other, 0 to 1. */
            baseKinship: number;
        };
        PedigreeEdgeView: {
            /** @description Id of the upper node. */
            from: string;
            /** @description Id of the lower node. */
            to: string;
            /**
             * @description parent: individual to clutch; young: clutch to individual; founder: source to individual.
             * @enum {string}
             */
            kind: "parent" | "young" | "founder";
            /**
             * @description Of a parent: as what; `either` where sexes are not known.
             * @enum {string}
             */
            role?: "sire" | "dam" | "either";
            /** @description Of a parent: the probability that it is one, above 0, at most 1. */
            probability?: number;
        };
        PedigreeView: {
            /**
             * Format: uuid
             * @description Id of the animal asked about.
             */
            root: string;
            /** @description All nodes, each once, in the order of their ids. */
            nodes: (components["schemas"]["IndividualNodeView"] | components["schemas"]["ClutchNodeView"] | components["schemas"]["SourceNodeView"])[];
            /** @description All edges, in the order of the ids that they join. */
            edges: components["schemas"]["PedigreeEdgeView"][];
            /** @description Whether the chart ended early because it reached `nodeLimit` nodes (or 20 000 edges). */
            truncated: boolean;
            /** @description Most nodes that a chart has. */
            nodeLimit: number;
        };
        DescendedFromView: {
            /** @description Id of the animal; "private-1" and so on, numbered within the answer, where it may not be seen. */
            id: string;
            /**
             * @description Registry number with its check character; null where it may not be seen.
             * @example 10704-4
             */
            number: string | null;
            /** @description The keeper's own code. */
            code: string | null;
            /**
             * @description Sex; unsexed where it may not be seen.
             * @enum {string}
             */
            sex: "male" | "female" | "unsexed";
            /** @description Whether it is a private animal that whoever asks may not see. */
            isPrivate: boolean;
            /**
             * @description Whether it lives; unknown where it may not be seen.
             * @enum {string}
             */
            status: "alive" | "died" | "gone" | "unknown";
            /** @description Hatching date, EDTF. */
            hatched: string | null;
            /**
             * Format: date
             * @description First calendar day that the hatching date may mean; null where it is open or not given.
             */
            earliest: string | null;
            /**
             * Format: date
             * @description Last calendar day that the hatching date may mean; null where it is open or not given.
             */
            latest: string | null;
            /** @description Expected genome shares by standing, best first; they sum to 1. Empty where it may not be seen. */
            standings: components["schemas"]["StandingShareView"][];
        };
        DatedClutchView: {
            /**
             * Format: uuid
             * @description Id of the clutch.
             */
            id: string;
            /** @description What people call it. */
            title: string;
            /** @description When it was laid, EDTF. */
            laid: string | null;
            /** @description Eggs. */
            eggs: number | null;
            /** @description Eggs that hatched. */
            hatched: number | null;
            /** @description Young that left the water. */
            outOfWater: number | null;
            /**
             * @description The role of the animal; "either" in a group that cannot be sexed.
             * @enum {string}
             */
            role: "sire" | "dam" | "either";
            /** @description Probability that the animal is a parent of it, over 0 to 1. */
            probability: number;
            /**
             * Format: date
             * @description First calendar day that the laying date may mean; null where it is open or not given.
             */
            earliest: string | null;
            /**
             * Format: date
             * @description Last calendar day that the laying date may mean; null where it is open or not given.
             */
            latest: string | null;
        };
        DescendantView: {
            /** @description Id of the animal; "private-1" and so on, numbered within the answer, where it may not be seen. */
            id: string;
            /**
             * @description Registry number with its check character; null where it may not be seen.
             * @example 10704-4
             */
            number: string | null;
            /** @description The keeper's own code. */
            code: string | null;
            /**
             * @description Sex; unsexed where it may not be seen.
             * @enum {string}
             */
            sex: "male" | "female" | "unsexed";
            /** @description Whether it is a private animal that whoever asks may not see. */
            isPrivate: boolean;
            /**
             * @description Whether it lives; unknown where it may not be seen.
             * @enum {string}
             */
            status: "alive" | "died" | "gone" | "unknown";
            /** @description Whether a clutch that may be seen names it as a possible parent; false where it may not be seen itself. */
            hasYoung: boolean;
            /** @description Expected genome shares by standing, best first; they sum to 1. Empty where it may not be seen. */
            standings: components["schemas"]["StandingShareView"][];
        };
        FamilyView: {
            /**
             * Format: uuid
             * @description Id of the animal whose clutch it is or may be.
             */
            parent: string;
            /** @description The clutch, with the role and the odds of that animal. */
            clutch: components["schemas"]["DatedClutchView"];
            /** @description Who may be the other parent, most probable first. */
            mates: components["schemas"]["MateView"][];
            /** @description Its young in the register, by number. Those that may not be seen are numbered for each parent anew. */
            animals: components["schemas"]["DescendantView"][];
        };
        DescendantsView: {
            /** @description The animal asked about. */
            root: components["schemas"]["DescendedFromView"];
            /** @description Clutches, generation by generation, those of one parent newest first. A clutch of two of them stands here under each. */
            families: components["schemas"]["FamilyView"][];
            /** @description Whether there are more with young of their own than `parentLimit`; ask for those one by one. */
            truncated: boolean;
            /** @description Most animals whose clutches one answer tells. */
            parentLimit: number;
        };
        InbreedingFigureView: {
            /** @description Expected inbreeding coefficient F over the candidate pairs, 0 to 1, without unit (Wright 1922). */
            expected: number;
            /** @description F if the least related candidate pair are the parents, 0 to 1. */
            least: number;
            /** @description F if the most related candidate pair are the parents, 0 to 1. */
            greatest: number;
            /** @description True where F rests on nothing: neither a source nor any known parent is recorded. Show "nothing known" then, never 0. */
            nothingKnown: boolean;
            /** @description Probability that both parents are recorded animals, 0 to 1. The rest counts as F = 0 for want of knowledge; 0 for an animal without a clutch. */
            bothParentsKnown: number;
        };
        SpreadQuantileView: {
            /** @description Probability that F is not greater, 0 to 1. */
            probability: number;
            /** @description The least F for which that holds, 0 to 1. */
            value: number;
        };
        SpreadValueView: {
            /** @description Inbreeding coefficient F, 0 to 1. */
            value: number;
            /** @description Its probability, or its part of the drawn assignments, above 0, at most 1. */
            share: number;
        };
        SpreadBinView: {
            /** @description The least F of the bin, 0 to 1. */
            from: number;
            /** @description F at which the next bin begins, 0 to 1; the last bin has it in it. */
            to: number;
            /** @description Probability of the bin, or its part of the drawn assignments, 0 to 1. */
            share: number;
        };
        InbreedingSpreadView: {
            /** @description Expected F, and its least and greatest over the candidate pairs of the own clutch, each averaged over the ancestry. */
            inbreeding: components["schemas"]["InbreedingFigureView"];
            /**
             * @description certain: no parent among the ancestors is uncertain, F is one value; enumerated: every assignment was gone through, the distribution is exact; sampled: assignments were drawn.
             * @enum {string}
             */
            method: "certain" | "enumerated" | "sampled";
            /** @description Clutches among the ancestors, its own included, with more than one candidate pair. */
            uncertainClutches: number;
            /** @description In how many ways one pair can be chosen for each of these clutches; beyond 9 007 199 254 740 991 the nearest number that a computer holds. Null beyond 10³⁰⁸. */
            assignments: number | null;
            /** @description How many assignments were gone through or drawn. */
            samples: number;
            /** @description Seed of the drawing; null where nothing was drawn. */
            seed: number | null;
            /** @description Mean F over the assignments, 0 to 1. Within an assignment F is exact (Wright 1922); drawing what a pedigree leaves open is after MacCluer et al. 1986. Compare it with `inbreeding.expected`. */
            mean: number;
            /** @description Standard error of the mean, by which it may miss the expected F by chance; 0 where nothing was drawn. */
            standardError: number;
            /** @description Standard deviation of F over the assignments. */
            standardDeviation: number;
            /** @description The least F among the assignments, 0 to 1; rarer ones may be missed by drawing. */
            least: number;
            /** @description The greatest F among the assignments, 0 to 1; rarer ones may be missed by drawing. */
            greatest: number;
            /** @description F at the probabilities 0.05, 0.25, 0.5, 0.75 and 0.95. */
            quantiles: components["schemas"]["SpreadQuantileView"][];
            /** @description The different values of F, the least first, where they are 32 at most; null where `bins` are given. */
            values: components["schemas"]["SpreadValueView"][] | null;
            /** @description 40 bins side by side from the least to the greatest F, of equal width in the square root of F; null where `values` are given. */
            bins: components["schemas"]["SpreadBinView"][] | null;
            /** @description Whether the figures follow every change of the register. */
            current: boolean;
            /** @description The state of the register that the figures belong to. */
            asOf: components["schemas"]["AsOfView"];
        };
        AssumedSource: {
            /**
             * Format: uuid
             * @description The source.
             */
            id: string;
            /** @description Kinship assumed between any two animals that came together, 0 to 1. */
            baseKinship: number;
        };
        AssumedClutch: {
            /** @description Candidate sires; an empty list says that nothing is known. */
            sires?: components["schemas"]["CandidateRequest"][];
            /** @description Candidate dams; an empty list says that nothing is known. */
            dams?: components["schemas"]["CandidateRequest"][];
            /** @description Candidate pairs instead of sires and dams, where sexes are not known. */
            pairs?: components["schemas"]["CandidatePairRequest"][];
            /**
             * Format: uuid
             * @description The clutch.
             */
            id: string;
        };
        WhatIfRequest: {
            /** @description Sources with another base kinship. */
            sources?: components["schemas"]["AssumedSource"][];
            /** @description Clutches with other parents, or other odds, in the form in which a clutch records them. */
            clutches?: components["schemas"]["AssumedClutch"][];
        };
        WhatIfFiguresView: {
            /** @description Inbreeding coefficient F with its range, 0 to 1 (Wright 1922). */
            inbreeding: components["schemas"]["InbreedingFigureView"];
            /** @description Ancestral inbreeding by the recursion of Ballou (1997), 0 to 1. */
            ancestralInbreeding: number;
            /** @description Mean kinship with the living animals of its line, 0 to 1 (Ballou & Lacy 1995). Null without a line or without living animals in it. */
            meanKinship: number | null;
            /** @description Pedigree depth, in generations. */
            depth: number;
            /** @description Generations back in which every ancestor is known. */
            fullDepth: number;
            /** @description Complete generation equivalent, in generations (Maignel et al. 1996). */
            generationEquivalents: number;
            /** @description How complete the pedigree is. */
            completeness: components["schemas"]["CompletenessView"];
            /** @description Generations since the wild (CITES Resolution Conf. 10.16); null where they cannot be known. */
            filialGeneration: number | null;
            /** @description Expected genome shares by standing, best first; they sum to 1. */
            standings: components["schemas"]["StandingShareView"][];
        };
        WhatIfDifferenceView: {
            /** @description Difference of the expected F, −1 to 1. */
            inbreeding: number;
            /** @description Difference of the least F, −1 to 1. */
            inbreedingLeast: number;
            /** @description Difference of the greatest F, −1 to 1. */
            inbreedingGreatest: number;
            /** @description Difference of ancestral inbreeding, −1 to 1. */
            ancestralInbreeding: number;
            /** @description Difference of mean kinship, −1 to 1; null where there is none. */
            meanKinship: number | null;
            /** @description Difference of the depth, in generations. */
            depth: number;
            /** @description Difference of the generations in which all are known. */
            fullDepth: number;
            /** @description Difference of the complete generation equivalent, in generations. */
            generationEquivalents: number;
            /** @description Difference of the completeness index, −1 to 1. */
            completeness: number;
        };
        WhatIfShareView: {
            /** @description The source that the founders came from. */
            source?: components["schemas"]["ShareSourceView"];
            /** @description A founder of unknown origin. */
            founder?: components["schemas"]["AnimalRef"];
            /** @description The clutch of which a parent is unknown. */
            unknownParentOf?: components["schemas"]["ShareClutchView"];
            /**
             * @description How well it stands, by rule, under the label asked about: unknown for a parent that nobody knows, for a founder of unknown origin of which nothing is claimed, and for what may not be seen.
             * @enum {string}
             */
            standing: "documented" | "corroborated" | "stated" | "by-looks" | "disputed" | "unknown";
            /** @description Expected share of the genome as recorded, 0 to 1. */
            recorded: number;
            /** @description Expected share of the genome as assumed, 0 to 1. */
            assumed: number;
            /** @description The difference, −1 to 1. */
            difference: number;
        };
        AssumableSourceView: {
            /** @description Id of the source; "private-source-1" and so on where it may not be seen. */
            id: string;
            /** @description What it is called. */
            title: string;
            /** @description Whether it is private: nothing can be assumed of it then. */
            isPrivate: boolean;
            /** @description Base kinship as recorded, 0 to 1; null where it may not be seen. */
            baseKinship: number | null;
        };
        RecordedCandidateView: {
            /** @description The animal; null for one that nobody knows. */
            animal: components["schemas"]["AnimalRef"] | null;
            /** @description Probability as recorded, above 0, at most 1. */
            probability: number;
        };
        RecordedPairView: {
            /** @description One of the two. */
            a: components["schemas"]["AnimalRef"] | null;
            /** @description The other. */
            b: components["schemas"]["AnimalRef"] | null;
            /** @description Probability as recorded, above 0, at most 1. */
            probability: number;
        };
        AssumableClutchView: {
            /** @description Id of the clutch; "private-clutch-1" and so on where it may not be seen. */
            id: string;
            /** @description Whether it is a private clutch that whoever asks may not see. */
            isPrivate: boolean;
            /**
             * @description What it is called.
             * @example clutch of 2021-04-12
             */
            title: string;
            /** @description Candidate sires; null where pairs are recorded. */
            sires: components["schemas"]["RecordedCandidateView"][] | null;
            /** @description Candidate dams; null where pairs are recorded. */
            dams: components["schemas"]["RecordedCandidateView"][] | null;
            /** @description Candidate pairs; null where sires and dams are recorded. */
            pairs: components["schemas"]["RecordedPairView"][] | null;
        };
        WhatIfView: {
            /** @description As recorded. */
            recorded: components["schemas"]["WhatIfFiguresView"];
            /** @description As assumed. */
            assumed: components["schemas"]["WhatIfFiguresView"];
            /** @description As assumed, less as recorded; differences below 1e-12 are 0. */
            difference: components["schemas"]["WhatIfDifferenceView"];
            /** @description Where the genome is expected to come from, as recorded and as assumed, the largest share first; at most 50. */
            shares: components["schemas"]["WhatIfShareView"][];
            /** @description Sources in the recorded ancestry, of which another base kinship can be assumed, the largest share first; at most 50. */
            sources: components["schemas"]["AssumableSourceView"][];
            /** @description Clutches of the recorded ancestry with uncertain parents, the youngest first; at most 20. */
            clutches: components["schemas"]["AssumableClutchView"][];
            /** @description How many further clutches there have uncertain parents. */
            otherClutches: number;
            /** @description The state of the register that the figures belong to. */
            asOf: components["schemas"]["AsOfView"];
        };
        KinshipRequest: {
            /** @description Ids or registry numbers of 1 to 500 different animals; a withdrawn animal counts too. */
            individuals: string[];
            /** @description Also tell what young of each two would be: F with its range and what it rests on; of at most 60 animals. Not if left out. */
            young?: boolean;
        };
        YoungInbreedingView: {
            /** @description Expected inbreeding coefficient F over the candidate pairs, 0 to 1, without unit (Wright 1922). */
            expected: number;
            /** @description F if the least related candidate pair are the parents, 0 to 1. */
            least: number;
            /** @description F if the most related candidate pair are the parents, 0 to 1. */
            greatest: number;
            /** @description True where a 0 rests on nothing: of one of the two neither a source nor any known parent is recorded, and nobody above both. Show "nothing known" then, never 0. */
            nothingKnown: boolean;
            /** @description Generations on the longest recorded path from the young to a founder: 1 where both parents are founders. Null in plans that were kept without it. */
            depth: number | null;
            /** @description Generations back in which every ancestor of the young is certainly a recorded one, its parents among them. Null in plans that were kept without it. */
            fullDepth: number | null;
        };
        KinshipView: {
            /** @description The animals, in the order they were named. */
            individuals: components["schemas"]["AnimalRef"][];
            /** @description Expected kinships φ, 0 to 1 (Malécot 1948): full and symmetric, rows and columns in the order of `individuals`; ½(1+F) where an animal meets itself. Twice them is the relationship matrix. */
            kinship: number[][];
            /** @description What young of each two would be, in the same order, whatever their sexes; null where an animal meets itself. Null unless asked for. */
            young: (components["schemas"]["YoungInbreedingView"] | null)[][] | null;
            /** @description The state of the register that the figures belong to. */
            asOf: components["schemas"]["AsOfView"];
        };
        ProposedParent: {
            /** @description Id or registry number of the animal. */
            individual: string;
            /** @description How likely it is against the others of its side, any unit; 1 if left out. */
            weight?: number;
        };
        ForecastRequest: {
            /** @description Candidate sires, males or unsexed animals: ids, registry numbers, or objects with a weight. 1 to 40. */
            sires: (string | components["schemas"]["ProposedParent"])[];
            /** @description Candidate dams, females or unsexed animals: ids, registry numbers, or objects with a weight. 1 to 40. */
            dams: (string | components["schemas"]["ProposedParent"])[];
        };
        ForecastInbreedingView: {
            /** @description Expected inbreeding coefficient F over the candidate pairs, 0 to 1, without unit (Wright 1922). */
            expected: number;
            /** @description F if the least related candidate pair are the parents, 0 to 1. */
            least: number;
            /** @description F if the most related candidate pair are the parents, 0 to 1. */
            greatest: number;
            /** @description Every possible pair, the likeliest first. */
            pairs: components["schemas"]["PairView"][];
        };
        ForecastLabelView: {
            /** @description Expected genome shares of the young by standing, best first; they sum to 1. */
            shares: components["schemas"]["StandingShareView"][];
            /** @description How much of the young would be traced to founders that carry their label on paper; 0 without one label. */
            tracedShare: components["schemas"]["TracedShareView"];
            /** @description Labels of founders that are none of `names`, the largest share first. */
            otherLabels: components["schemas"]["OtherLabelView"][];
            /** @description Names of the lines that the proposed parents belong to; more than one would make a cross. */
            names: string[];
        };
        ForecastView: {
            /** @description Inbreeding coefficient of the young, with its range over the possible pairs. */
            inbreeding: components["schemas"]["ForecastInbreedingView"];
            /** @description The label of the young. */
            label: components["schemas"]["ForecastLabelView"];
            /** @description What the audit would hold against the label of the young, the gravest first. */
            flags: components["schemas"]["FlagView"][];
            /** @description The state of the register that the figures belong to. */
            asOf: components["schemas"]["AsOfView"];
        };
        FiguresRequest: {
            /** @description Ids or registry numbers of 1 to 200 different animals; a withdrawn animal counts too. */
            individuals: string[];
        };
        FigureItemView: {
            /**
             * Format: uuid
             * @description Id of the individual.
             */
            id: string;
            /** @description Inbreeding coefficient with its range. */
            inbreeding: components["schemas"]["InbreedingFigureView"];
            /** @description Generations on the longest recorded path to a founder; 0 for a founder. */
            depth: number;
            /** @description Expected genome shares by standing, best first; they sum to 1. */
            standings: components["schemas"]["StandingShareView"][];
            /** @description How much of the animal is traced to founders that carry its label on paper. */
            tracedShare: components["schemas"]["TracedShareView"];
            /** @description Mean kinship with the living animals of its line, itself included where it lives, 0 to 1 (Ballou & Lacy 1995), as it was last written: the value that lists are sorted and filtered by, which follows a change a moment later (GET /lineage/progress tells). Null without a line or without living animals in it, or while it is still to be written. */
            meanKinship: number | null;
            /** @description What the audit holds against its label, the gravest first; ask for its lineage to learn why. */
            flags: ("disputed-claim" | "mixed-labels" | "outside-line" | "label-changed" | "label-beyond-evidence" | "outside-range" | "export-route" | "date-conflict" | "origin-gap" | "country-only" | "parents-uncertain")[];
            /** @description Those of its flags that a registrar acknowledged; ask for its lineage to learn why. */
            acknowledged: ("disputed-claim" | "mixed-labels" | "outside-line" | "label-changed" | "label-beyond-evidence" | "outside-range" | "export-route" | "date-conflict" | "origin-gap" | "country-only" | "parents-uncertain")[];
        };
        FiguresView: {
            /** @description One item an animal, in the order they were named. */
            items: components["schemas"]["FigureItemView"][];
            /** @description The state of the register that the figures belong to. */
            asOf: components["schemas"]["AsOfView"];
        };
        SetInbreedingView: {
            /** @description How many animals it rests on: those with a recorded source or at least one recorded parent. */
            animals: number;
            /** @description Mean of their expected inbreeding coefficients F, 0 to 1, without unit (Wright 1922). Null where nothing is known of any of them. */
            mean: number | null;
            /** @description The least expected F among them, 0 to 1; null where there is none. */
            least: number | null;
            /** @description The greatest expected F among them, 0 to 1; null where there is none. */
            greatest: number | null;
        };
        AncestorContributionView: {
            /** @description The ancestor. */
            ancestor?: components["schemas"]["AnimalRef"];
            /** @description The clutch of which an unknown parent is the ancestor. */
            unknownParentOf?: components["schemas"]["ShareClutchView"];
            /** @description Marginal contribution, above 0, at most 1: what the ancestors before it do not explain already. */
            share: number;
        };
        SetAncestorsView: {
            /** @description Effective number of ancestors, 1/Σ of the squared marginal contributions (Boichard, Maignel & Verrier 1997); a count of animals. Below the effective number of founders after a bottleneck. Null for an empty set. */
            effective: number | null;
            /** @description The ancestors that explain most, in the order in which they are picked, at most 24. */
            items: components["schemas"]["AncestorContributionView"][];
            /** @description How many ancestors were picked in all. */
            picked: number;
            /** @description Part of the gene pool that the picked ancestors leave unexplained, 0 to 1: above 0 only where the set is so large that picking was ended early; the effective number is then too large by little. */
            unexplained: number;
        };
        SetContributionsView: {
            /** @description The origins with the largest expected parts in the gene pool, the largest first, at most 24; founders of one source together (Lacy 1989). */
            items: components["schemas"]["ShareView"][];
            /** @description Expected parts of the gene pool by how well the label of their founders stands, best first, further origins included; they sum to 1. Empty for an empty set. */
            standings: components["schemas"]["StandingShareView"][];
            /** @description How many further origins there are. */
            others: number;
            /** @description What those further origins give together, 0 to 1. */
            othersShare: number;
        };
        SetEffectiveSizeView: {
            /** @description How many animals it rests on: those with more than one complete generation equivalent. */
            animals: number;
            /** @description Mean individual increase of inbreeding per generation, ΔF = 1 − (1 − F)^(1/(t − 1)), 0 to 1 (Gutiérrez, Cervantes & Goyache 2009). Null without such animals. */
            increase: number | null;
            /** @description Realised effective size, 1/(2 ΔF), in animals (Gutiérrez, Cervantes & Goyache 2009). Null where no increase is recorded: it is then undefined, not infinite. */
            effectiveSize: number | null;
            /** @description Standard error of the effective size, in animals; null where it rests on fewer than two animals. */
            standardError: number | null;
            /** @description Why there is no effective size, in a plain sentence; null where there is one. */
            note: string | null;
        };
        SetDepthView: {
            /** @description Mean pedigree depth, in generations; null for an empty set. */
            mean: number | null;
            /** @description Greatest pedigree depth, in generations; null for an empty set. */
            greatest: number | null;
            /** @description Mean number of generations back in which every ancestor is known; null for an empty set. */
            full: number | null;
            /** @description Mean complete generation equivalent, in generations (Maignel, Boichard & Verrier 1996); null for an empty set. */
            generationEquivalents: number | null;
        };
        HatchYearView: {
            /** @description Year of hatching. */
            year: number;
            /** @description How many animals of the set hatched in it. */
            animals: number;
            /** @description Their inbreeding. */
            inbreeding: components["schemas"]["SetInbreedingView"];
            /** @description Gene diversity of the young of the year, 1 − their mean kinship, 0 to 1 (Lacy 1989). */
            geneDiversity: number;
            /** @description Expected parts of their gene pool from each origin in `contributions.items`, in the same order, each 0 to 1; what is missing from 1 comes from further origins. */
            shares: number[];
        };
        LineageSetView: {
            /** @description How many animals the set has. */
            animals: number;
            /** @description How many of them nothing is known of: no source and no parent is recorded. */
            nothingKnown: number;
            /** @description Their inbreeding coefficients. */
            inbreeding: components["schemas"]["SetInbreedingView"];
            /** @description Mean of all kinships within the set, each animal with itself included, 0 to 1, expected over uncertain parents (Ballou & Lacy 1995). Null for an empty set. */
            meanKinship: number | null;
            /** @description Gene diversity, 1 − mean kinship, 0 to 1: what is left of the diversity of unrelated founders (Lacy 1989). Null for an empty set. */
            geneDiversity: number | null;
            /** @description Founder genome equivalents, 1/(2 · mean kinship): so many unrelated founders would hold as much diversity; a count of animals (Lacy 1989; Ballou & Lacy 1995). Null for an empty set. */
            founderGenomeEquivalents: number | null;
            /** @description Effective number of founders, 1/Σp² over every single founder and unknown parent, p its part of the gene pool; a count of animals (Lacy 1989). Null for an empty set. */
            effectiveFounders: number | null;
            /** @description The ancestors that explain the gene pool. */
            effectiveAncestors: components["schemas"]["SetAncestorsView"];
            /** @description Where the gene pool begins. */
            contributions: components["schemas"]["SetContributionsView"];
            /** @description Increase of inbreeding per generation, and effective size. */
            effectiveSize: components["schemas"]["SetEffectiveSizeView"];
            /** @description How far the pedigrees reach. */
            depth: components["schemas"]["SetDepthView"];
            /** @description The young of each year of hatching, in the order of years. Animals not dated to the year are in none. */
            years: components["schemas"]["HatchYearView"][];
            /** @description How many animals are not dated to a year of hatching. */
            undated: number;
            /** @description What must be kept in mind with these figures, in plain sentences; to be shown beside them. */
            cautions: string[];
            /** @description Whether the figures follow every change of the register; false while figures of some of the animals are still being recomputed. */
            current: boolean;
            /** @description The state of the register that the figures belong to. */
            asOf: components["schemas"]["AsOfView"];
        };
        LineageSetRequest: {
            /** @description Ids or registry numbers of 1 to 5000 different animals; a withdrawn animal counts too. */
            individuals: string[];
        };
        AuditedLineView: {
            /**
             * Format: uuid
             * @description Id of the line.
             */
            id: string;
            /** @description Name of the line: the label of its members. */
            name: string;
            /** @description Scientific name of the species. */
            species: string;
            /**
             * @description Kind of label.
             * @enum {string}
             */
            labelKind: "locality" | "trade-name" | "cross" | "unlabelled";
        };
        KeeperMembersView: {
            /** @description Name of the keeper; null where whoever asks is told no names. */
            keeper: string | null;
            /**
             * Format: uuid
             * @description Id of the keeper.
             */
            keeperId: string | null;
            /** @description How many members they keep or kept last. */
            members: number;
            /** @description How many of these live. */
            living: number;
        };
        AuditMembersView: {
            /** @description All members, the dead among them. */
            all: number;
            /** @description Those that live. */
            living: number;
            /** @description By keeper, the most living first, at most 100. */
            byKeeper: components["schemas"]["KeeperMembersView"][];
        };
        FlagCauseView: {
            /**
             * @description What kind of record it is.
             * @enum {string}
             */
            kind: "individual" | "clutch" | "source" | "line";
            /** @description Its id; "private-1" and so on where it may not be seen. */
            id: string;
            /** @description What it is called: code and registry number of an animal, title of a clutch or source, name of a line. */
            name: string;
            /** @description Whether it is a private record that whoever asks may not see. */
            isPrivate: boolean;
            /** @description How many members with the flag descend from it, or are it. */
            members: number;
            /** @description How many of these live. */
            living: number;
            /** @description Expected part of the gene pool of the living that came through it, 0 to 1; of all members where none lives. */
            share: number;
        };
        LineFlagView: {
            /**
             * @description Which rule raised it.
             * @enum {string}
             */
            code: "disputed-claim" | "mixed-labels" | "outside-line" | "label-changed" | "label-beyond-evidence" | "outside-range" | "export-route" | "date-conflict" | "origin-gap" | "country-only" | "parents-uncertain";
            /**
             * @description What it does to the label.
             * @enum {string}
             */
            severity: "breaks" | "weakens" | "worth-knowing";
            /** @description How many members carry it, in a plain sentence. */
            detail: string;
            /** @description How many members carry it. */
            members: number;
            /** @description How many of these live. */
            living: number;
            /** @description The records that cause it, those with the largest part of the gene pool first, at most 50. */
            causes: components["schemas"]["FlagCauseView"][];
            /** @description How many records cause it in all. */
            causeCount: number;
            /** @description What would clear it, in a plain sentence. */
            clearedBy: string;
            /** @description That a registrar acknowledged this flag of the line, and why; it stays as grave as it is. Null where nobody did. */
            acknowledged: components["schemas"]["AcknowledgedView"] | null;
            /** @description How many of the members that carry it have it acknowledged of themselves, as of animals. */
            membersAcknowledged: number;
        };
        AuditGroupView: {
            /** @description How many animals it rests on. */
            animals: number;
            /** @description Mean expected inbreeding coefficient F, 0 to 1 (Wright 1922); null for none. */
            meanInbreeding: number | null;
            /** @description Gene diversity, 1 − mean kinship, 0 to 1 (Lacy 1989); null for none. */
            geneDiversity: number | null;
            /** @description Founder genome equivalents, 1/(2 · mean kinship), in animals (Lacy 1989); null for none. */
            founderGenomeEquivalents: number | null;
            /** @description Effective number of founders, 1/Σp², in animals (Lacy 1989); null for none. */
            effectiveFounders: number | null;
            /** @description Expected parts of the gene pool from each of `origins`, in the same order, 0 to 1 each. */
            shares: number[];
        };
        AuditYearView: {
            /** @description The year. */
            year: number;
            /** @description The young that hatched in it. */
            young: components["schemas"]["AuditGroupView"];
            /** @description The members that lived at its end: hatched, or arrived with their source, in that year or before, and living still or died later. Members whose dates leave that open are in no year. */
            standing: components["schemas"]["AuditGroupView"];
        };
        OutsideBloodView: {
            /** @description The animal of another line through which it came, the nearest to the members. */
            through: components["schemas"]["AnimalRef"];
            /** @description Its line; null where it may not be told. */
            line: string | null;
            /** @description Year in which the first dated member with it hatched; null without any. */
            since: number | null;
            /** @description Expected part of the gene pool of the living that it makes, 0 to 1. */
            share: number;
            /** @description How many members descend from it. */
            members: number;
            /** @description How many of these live. */
            living: number;
        };
        AuditGapView: {
            /**
             * @description What kind of record it is.
             * @enum {string}
             */
            kind: "individual" | "clutch" | "source" | "line";
            /** @description Its id; "private-1" and so on where it may not be seen. */
            id: string;
            /** @description What it is called: code and registry number of an animal, title of a clutch or source, name of a line. */
            name: string;
            /** @description Whether it is a private record that whoever asks may not see. */
            isPrivate: boolean;
            /** @description How many members with the flag descend from it, or are it. */
            members: number;
            /** @description How many of these live. */
            living: number;
            /** @description Expected part of the gene pool of the living that came through it, 0 to 1; of all members where none lives. */
            share: number;
        };
        AuditGapsView: {
            /** @description Founders of unknown origin, and clutches of which a parent is unknown, at most 50. */
            items: components["schemas"]["AuditGapView"][];
            /** @description How many there are in all. */
            count: number;
            /** @description Expected part of the gene pool of the living that comes from all of them, 0 to 1. */
            share: number;
        };
        OutrunningView: {
            /** @description The animal. */
            animal: components["schemas"]["AnimalRef"];
            /** @description Expected share of founders whose papers name the label, 0 to 1. */
            traced: number;
            /** @description The least that this share can be, however candidate parents turn out, 0 to 1. */
            least: number;
            /** @description What is missing: 1 minus the least traced share, 0 to 1. */
            shortfall: number;
            /** @description Whether a registrar acknowledged that of this animal; its lineage says why. */
            isAcknowledged: boolean;
        };
        AuditTracedView: {
            /** @description Mean expected traced share of the living, 0 to 1; null where none lives. */
            expected: number | null;
            /** @description Mean of their least traced shares, 0 to 1; null where none lives. */
            least: number | null;
            /** @description How many of the living have a label that says more than its evidence. */
            outrunning: number;
            /** @description Those with the least traced share first, at most 100. */
            items: components["schemas"]["OutrunningView"][];
        };
        RemovalAnimalView: {
            /** @description The animal. */
            animal: components["schemas"]["AnimalRef"];
            /** @description Expected share of its genome from other lines, 0 to 1; 0 where it only has founders that carry other labels. */
            outside: number;
            /** @description Which of the flags about foreign blood it carries; none where its founders all carry one other label. */
            flags: ("disputed-claim" | "mixed-labels" | "outside-line" | "label-changed" | "label-beyond-evidence" | "outside-range" | "export-route" | "date-conflict" | "origin-gap" | "country-only" | "parents-uncertain")[];
            /** @description Those that a registrar acknowledged of this animal; its lineage says why. */
            acknowledged: ("disputed-claim" | "mixed-labels" | "outside-line" | "label-changed" | "label-beyond-evidence" | "outside-range" | "export-route" | "date-conflict" | "origin-gap" | "country-only" | "parents-uncertain")[];
        };
        RemovalView: {
            /** @description How many of the living carry blood of another line, or of founders that carry another label (under a name that claims nothing: of several labels): the least that would have to leave breeding. 0 for a cross, which is no fault. */
            count: number;
            /** @description Some of them, those with the most foreign blood first, at most 100. */
            animals: components["schemas"]["RemovalAnimalView"][];
            /** @description The living as they are. */
            before: components["schemas"]["AuditGroupView"];
            /** @description The living without them. */
            after: components["schemas"]["AuditGroupView"];
        };
        OpenQuestionView: {
            /**
             * @description What is not known.
             * @enum {string}
             */
            kind: "undocumented-source" | "unknown-origin" | "unknown-parent" | "uncertain-clutch";
            /** @description The source, founder or clutch that it is about. */
            record: components["schemas"]["NamedRecordView"];
            /** @description The question, in plain words. */
            question: string;
            /** @description Part of the expected genome of the living that an answer would settle, above 0, at most 1. Of a source: what comes from its founders and would be traced. Of a founder of unknown origin or an unknown parent: what comes from it. Of an uncertain clutch: what came through parents that are only candidates. Each as if all other questions stayed open: these parts must not be added. */
            settles: number;
        };
        OpenQuestionsView: {
            /** @description The one that settles the most first, at most 25. */
            items: components["schemas"]["OpenQuestionView"][];
            /** @description How many there are in all. */
            count: number;
        };
        LineAuditView: {
            /** @description The line. */
            line: components["schemas"]["AuditedLineView"];
            /** @description Its members, counted. */
            members: components["schemas"]["AuditMembersView"];
            /** @description The flags that members carry, the gravest first. */
            flags: components["schemas"]["LineFlagView"][];
            /** @description Expected parts of the gene pool of the living by how well the label of their founders stands, best first; they sum to 1. Empty where none lives. */
            standings: components["schemas"]["StandingShareView"][];
            /** @description Where the gene pool of all members begins, the largest parts first, at most 24; founders of one source together. */
            origins: components["schemas"]["ShareView"][];
            /** @description How many origins there are in all. */
            originCount: number;
            /** @description All members together. */
            all: components["schemas"]["AuditGroupView"];
            /** @description The living together. */
            now: components["schemas"]["AuditGroupView"];
            /** @description Each year in which a member hatched or died, in their order, the latest 80. */
            years: components["schemas"]["AuditYearView"][];
            /** @description How many members are dated to a year of hatching. */
            dated: number;
            /** @description How many members have dates that leave open in which years they lived. */
            untold: number;
            /** @description Blood from outside the line, the largest part first, at most 50. */
            outsideBlood: components["schemas"]["OutsideBloodView"][];
            /** @description What is not known of where the line comes from. */
            gaps: components["schemas"]["AuditGapsView"];
            /** @description How far the labels of the living are borne out by papers. */
            traced: components["schemas"]["AuditTracedView"];
            /** @description What taking animals out of breeding would restore, and cost. */
            removal: components["schemas"]["RemovalView"];
            /** @description What to find out first. */
            questions: components["schemas"]["OpenQuestionsView"];
            /** @description What must be kept in mind with these figures, in plain sentences. */
            cautions: string[];
            /** @description The state of the register that this is computed from. */
            asOf: components["schemas"]["AsOfView"];
        };
        AnimalColumnsView: {
            /** @description Id; "private-1" and so on for one that may not be seen. */
            id: string[];
            /** @description Registry number; null where the animal may not be seen. */
            number: (string | null)[];
            /** @description The keeper's own code. */
            code: (string | null)[];
            /** @description Sex as recorded. */
            sex: ("male" | "female" | "unsexed")[];
            /** @description Status as recorded. */
            status: ("alive" | "died" | "gone" | "unknown")[];
            /** @description Place in `clutches` of the clutch that it hatched from; −1 where none is told. */
            clutch: number[];
            /** @description Place in `sources` of its source; −1 without one. */
            source: number[];
            /** @description Place in `keepers` of its keeper; −1 where that is not told. */
            keeper: number[];
            /** @description Place in `lines` of its line; −1 for a member of the line asked about, and where it is not told. */
            line: number[];
            /** @description Hatching date, EDTF. */
            hatched: (string | null)[];
            /** @description First calendar day that the hatching date may mean; null where open. */
            earliest: (string | null)[];
            /** @description Last calendar day that the hatching date may mean; null where open. */
            latest: (string | null)[];
            /** @description Expected inbreeding coefficient, 0 to 1 (Wright 1922), to six decimals. Null where nothing is known or the animal may not be seen. */
            inbreeding: (number | null)[];
            /** @description How a founder stands under the label of the line; null for animals of a clutch, of another line, and private ones. */
            standing: ("documented" | "corroborated" | "stated" | "by-looks" | "disputed" | "unknown" | null)[];
        };
        StandingColumnsView: {
            /** @description A primary paper names the place. */
            documented: number[];
            /** @description Two independent papers agree. */
            corroborated: number[];
            /** @description Somebody's word. */
            stated: number[];
            /** @description Named by appearance. */
            "by-looks": number[];
            /** @description A paper contradicts. */
            disputed: number[];
            /** @description No claim, or parents that nobody knows. */
            unknown: number[];
        };
        ClutchColumnsView: {
            /** @description Id; "private-clutch-1" and so on for one that may not be seen. */
            id: string[];
            /** @description The keeper's own code. */
            code: (string | null)[];
            /** @description Laying date, EDTF. */
            laid: (string | null)[];
            /** @description First calendar day that the laying date may mean; null where open. */
            earliest: (string | null)[];
            /** @description Last calendar day that the laying date may mean; null where open. */
            latest: (string | null)[];
            /** @description Least inbreeding coefficient of its young over the candidate parents, 0 to 1; null where not told. */
            inbreedingLeast: (number | null)[];
            /** @description Greatest inbreeding coefficient of its young over the candidate parents, 0 to 1; null where not told. */
            inbreedingGreatest: (number | null)[];
            /** @description Probability that the sire is a frog nobody knows, 0 to 1. */
            unknownSire: number[];
            /** @description Probability that the dam is a frog nobody knows, 0 to 1. */
            unknownDam: number[];
            /** @description Genome shares of the young by standing; they sum to 1, to 0 where the clutch may not be seen. */
            standings: components["schemas"]["StandingColumnsView"];
        };
        ParentColumnsView: {
            /** @description Place of the clutch in `clutches`. */
            clutch: number[];
            /** @description Place of the parent in `animals`. */
            animal: number[];
            /** @description As what; `either` where sexes are not known. */
            role: ("sire" | "dam" | "either")[];
            /** @description Probability that it is one, above 0, at most 1. */
            probability: number[];
        };
        OverTimeSourceView: {
            /** @description Id of the source; "private-source-1" and so on where it may not be seen. */
            id: string;
            /**
             * @description What it is called.
             * @example Import, about 1994
             */
            title: string;
            /** @description Date of the source, EDTF. */
            date: string | null;
            /**
             * Format: date
             * @description First calendar day that the date may mean; null where it is open or not given.
             */
            earliest: string | null;
            /**
             * Format: date
             * @description Last calendar day that the date may mean; null where it is open or not given.
             */
            latest: string | null;
            /**
             * @description How well it stands under the label of the line, by rule.
             * @enum {string}
             */
            standing: "documented" | "corroborated" | "stated" | "by-looks" | "disputed" | "unknown";
        };
        OverTimeKeeperView: {
            /**
             * Format: uuid
             * @description Id of the keeper.
             */
            id: string;
            /** @description Name of the keeper. */
            name: string;
        };
        LineOverTimeView: {
            /** @description How many of the animals are members of the line that may be seen; they come first. */
            members: number;
            /** @description The members in the order of their numbers, then other animals that are parents. */
            animals: components["schemas"]["AnimalColumnsView"];
            /** @description The clutches that they hatched from. */
            clutches: components["schemas"]["ClutchColumnsView"];
            /** @description Who may be a parent of which clutch. */
            parents: components["schemas"]["ParentColumnsView"];
            /** @description The sources of founders among the animals. */
            sources: components["schemas"]["OverTimeSourceView"][];
            /** @description Keepers of the animals. */
            keepers: components["schemas"]["OverTimeKeeperView"][];
            /** @description Names of the other lines that parents come from. */
            lines: string[];
            /** @description Whether the figures follow every change of the register; false while figures of some of the animals are still being recomputed. */
            current: boolean;
            /** @description The state of the register that the figures belong to. */
            asOf: components["schemas"]["AsOfView"];
        };
        SourceLivingView: {
            /** @description Living animals that came from the source themselves. */
            founders: number;
            /** @description Living animals that descend from it, or may, by one of their candidate parents or of those above. */
            descendants: number;
            /** @description Of those the ones that descend from it whichever of the candidates are the parents. */
            certain: number;
            /** @description What it makes up of all living animals: the expected shares of founders and descendants added up, in whole animals. */
            animalsWorth: number;
            /** @description The state of the register that the figures belong to. */
            asOf: components["schemas"]["AsOfView"];
        };
        NewAcknowledgementRequest: {
            /**
             * Format: uuid
             * @description The animal that carries the flag.
             */
            individualId?: string;
            /**
             * Format: uuid
             * @description The line whose audit shows the flag.
             */
            lineId?: string;
            /**
             * @description The flag; the animal or line must carry it now.
             * @enum {string}
             */
            code: "disputed-claim" | "mixed-labels" | "outside-line" | "label-changed" | "label-beyond-evidence" | "outside-range" | "export-route" | "date-conflict" | "origin-gap" | "country-only" | "parents-uncertain";
            /**
             * @description Why it may stay. Every member who sees the flag reads it.
             * @example The importer died in 2003, and his papers went with him.
             */
            reason: string;
        };
        FiguresProgressView: {
            /** @description Whether every stored figure, by which lists are sorted and filtered, follows the newest change. The lineage of one animal says it for itself. */
            current: boolean;
            /** @description Records whose figures the recomputation under way has written; 0 where none is under way. */
            done: number;
            /** @description Records that it has to write; 0 where none is under way. */
            total: number;
        };
        MateLineView: {
            /**
             * Format: uuid
             * @description Id of the line.
             */
            id: string;
            /** @description Its name. */
            name: string;
        };
        BeginningView: {
            /** @description The founder; null where a whole source is meant. */
            founder: components["schemas"]["AnimalRef"] | null;
            /** @description The source, or that of the founder; null for a founder of unknown origin. */
            source: components["schemas"]["ShareSourceView"] | null;
        };
        FoundersLeftView: {
            /** @description How many founders of it come into question. */
            recorded: number;
            /** @description Of how many of them some living animal carries anything. */
            left: number;
        };
        KeptGenesView: {
            /** @description Expected share of the genes of the founders, two of each, that some living animal that may breed still carries, 0 to 1: the probability that any one of them is not lost (gene dropping, MacCluer et al. 1986). Every founder counts as having two genes of its own, whatever the base kinship of its source. */
            expected: number;
            /** @description Its standard error; 0 where it is exact. */
            standardError: number;
            /** @description Whether every way of descent was counted; else 10 000 were drawn, with seed 1. */
            isExact: boolean;
        };
        AgeView: {
            /** @description At least so many months of 30.4375 days; null where the date is open. */
            least: number | null;
            /** @description At most so many months of 30.4375 days; null where the date is open. */
            greatest: number | null;
        };
        CarriedShareView: {
            /** @description Expected share of the genome, 0 to 1: half from each parent, averaged over candidates. */
            expected: number;
            /** @description The share that it has whichever candidates are the parents, 0 to 1. */
            least: number;
        };
        CarrierView: {
            /** @description The animal. */
            animal: components["schemas"]["AnimalRef"];
            /** @description Its line; null without one, and where it may not be seen. */
            line: components["schemas"]["MateLineView"] | null;
            /** @description Its keeper; null where it may not be seen. */
            keeper: string | null;
            /**
             * Format: uuid
             * @description Id of its keeper; null as above.
             */
            keeperId: string | null;
            /** @description Its age; null without a hatching date, and where it may not be seen. */
            age: components["schemas"]["AgeView"] | null;
            /** @description Whether a clutch that is certainly its own has hatched; null where it may not be seen. */
            proven: boolean | null;
            /** @description How much of its genome comes from what is asked about; all of it for a line. */
            share: components["schemas"]["CarriedShareView"];
            /** @description Whether it may breed, now or once it is sexed; a private animal counts as one that may. */
            mayBreed: boolean;
            /** @description What a keeper must know before breeding from it: why it may not, a disputed label, an open sex or age. */
            warnings: string[];
        };
        AtRiskView: {
            /**
             * @description What it is.
             * @enum {string}
             */
            kind: "line" | "source" | "founder";
            /** @description The line; null for a source or a founder. */
            line: components["schemas"]["MateLineView"] | null;
            /** @description The source or the founder; null for a line. */
            beginning: components["schemas"]["BeginningView"] | null;
            /** @description Why it is told, in words. */
            why: string[];
            /** @description How many living animals that may breed carry anything of it; private ones count. */
            breeders: number;
            /** @description How many living animals carry anything of it, those that may not breed among them. */
            living: number;
            /**
             * @description Of which sex all are that may breed, for a line or a source; null where there are both, or one is not known.
             * @enum {string|null}
             */
            onlySex: "male" | "female" | null;
            /** @description Founders of the source; null otherwise. */
            founders: components["schemas"]["FoundersLeftView"] | null;
            /** @description Expected genomes of it in animals that may breed: the sum of their shares; for a line the number of its animals that may breed. */
            genomes: number;
            /** @description How much of the genes is still there; null for a line. */
            kept: components["schemas"]["KeptGenesView"] | null;
            /** @description Who carries it, those that may breed first, at most 12. */
            carriers: components["schemas"]["CarrierView"][];
        };
        LostView: {
            /** @description Lines without a living animal. */
            lines: number;
            /** @description Sources of which no living animal carries anything. */
            sources: number;
            /** @description Founders of which no living animal carries anything, sources that are lost not counted again. */
            founders: number;
        };
        AtRiskListView: {
            /** @description One page of it. */
            items: components["schemas"]["AtRiskView"][];
            /** @description Send it as `after` to go on; null at the end. */
            next: string | null;
            /** @description How much is about to be lost in all. */
            total: number;
            /** @description With so many animals that may breed, or fewer, it is told. */
            mostCarriers: number;
            /** @description What is lost already. */
            lost: components["schemas"]["LostView"];
            /** @description The state of the register that the figures belong to. */
            asOf: components["schemas"]["AsOfView"];
        };
        ExchangeSideRequest: {
            /**
             * Format: uuid
             * @description Keeper whose living animals of the line they are, as far as whoever asks may see them. Either this or `individuals`.
             */
            keeperId?: string;
            /** @description Ids or registry numbers of 1 to 400 living animals. Either this or `keeperId`. */
            individuals?: string[];
        };
        ExchangeRequest: {
            /**
             * Format: uuid
             * @description The line whose animals are exchanged.
             */
            lineId: string;
            /** @description The first side. */
            one: components["schemas"]["ExchangeSideRequest"];
            /** @description The other side. */
            other: components["schemas"]["ExchangeSideRequest"];
            /** @description Ids or registry numbers of animals that the first side gives to the other. */
            give?: string[];
            /** @description Ids or registry numbers of animals that the first side takes from the other. */
            take?: string[];
            /** @description How many exchanges of one animal for one are proposed at most; 5 if left out. */
            proposals?: number;
            /** @description Propose only a male for a male, a female for a female. */
            sameSex?: boolean;
            /** @description `cross-lines`: animals of other lines that the request names; `disputed`: animals whose label is disputed; `unsexed`: propose animals that were not sexed yet, too. The first two are refused otherwise where they are named, and carry a warning where they are asked for. */
            allow?: ("cross-lines" | "disputed" | "unsexed")[];
        };
        HoldingView: {
            /** @description How many animals they are. */
            animals: number;
            /** @description How many males. */
            males: number;
            /** @description How many females. */
            females: number;
            /** @description How many that were not sexed yet. */
            unsexed: number;
            /** @description Mean of all kinships among them, each with itself included, 0 to 1 (Ballou & Lacy 1995); null without animals, as are the next two. */
            meanKinship: number | null;
            /** @description Gene diversity, 1 minus the mean kinship, 0 to 1. */
            geneDiversity: number | null;
            /** @description Founder genome equivalents, 1/(2 · mean kinship) (Lacy 1989; Ballou & Lacy 1995); at least ½. */
            founderGenomeEquivalents: number | null;
            /** @description Of how many recorded founders anything is expected to be in them. */
            founders: number;
            /** @description Of how many recorded sources anything is expected to be in them. */
            sources: number;
            /** @description Expected part of their genes that comes from parents nobody knows, 0 to 1: these count as unrelated for want of knowledge. */
            unknown: number;
        };
        ExchangeSideView: {
            /** @description Its keeper; null for animals named one by one. */
            keeper: string | null;
            /**
             * Format: uuid
             * @description Id of its keeper; null as above.
             */
            keeperId: string | null;
            /** @description What it has. */
            before: components["schemas"]["HoldingView"];
        };
        MovingAnimalView: {
            /** @description The animal. */
            animal: components["schemas"]["AnimalRef"];
            /** @description Its line; null without one. */
            line: components["schemas"]["MateLineView"] | null;
            /** @description Its age; null without a hatching date. */
            age: components["schemas"]["AgeView"] | null;
            /** @description Whether a clutch that is certainly its own has hatched. */
            proven: boolean;
            /** @description Whether it lives in a pairing now, as far as whoever asks may see that. */
            housed: boolean;
            /** @description What a keeper must know before it moves: a cross, a disputed label, that it is housed or may not breed. */
            warnings: string[];
        };
        ExchangeOutcomeView: {
            /** @description What it has afterwards. */
            after: components["schemas"]["HoldingView"];
            /** @description Gene diversity afterwards minus before, −1 to 1; null where it has no animals before or after. */
            gain: number | null;
            /** @description Founders of which it had nothing before, at most 12. */
            won: components["schemas"]["BeginningView"][];
            /** @description How many founders of which it had nothing before, in all. */
            wonCount: number;
            /** @description Founders of which it has nothing any more, at most 12. */
            lost: components["schemas"]["BeginningView"][];
            /** @description How many founders of which it has nothing any more, in all. */
            lostCount: number;
            /** @description What its keeper must know before. */
            warnings: string[];
        };
        AskedExchangeView: {
            /** @description What the first side gives. */
            give: components["schemas"]["MovingAnimalView"][];
            /** @description What it takes. */
            take: components["schemas"]["MovingAnimalView"][];
            /** @description What it does for the first side. */
            one: components["schemas"]["ExchangeOutcomeView"];
            /** @description What it does for the other. */
            other: components["schemas"]["ExchangeOutcomeView"];
        };
        ProposedExchangeView: {
            /** @description What the first side gives. */
            give: components["schemas"]["MovingAnimalView"];
            /** @description What it takes. */
            take: components["schemas"]["MovingAnimalView"];
            /** @description What it does for the first side. */
            one: components["schemas"]["ExchangeOutcomeView"];
            /** @description What it does for the other. */
            other: components["schemas"]["ExchangeOutcomeView"];
        };
        NotProposedView: {
            /**
             * @description The reason; of several the plainest.
             * @enum {string}
             */
            reason: "not-living" | "keeper-left" | "unsexed" | "too-young" | "beyond-lifespan" | "disputed-label";
            /** @description The reason in words, and what would let these animals in. */
            detail: string;
            /** @description How many there are. */
            count: number;
            /** @description The first of them, at most 12. */
            animals: components["schemas"]["AnimalRef"][];
        };
        ExchangeView: {
            /** @description The line. */
            line: components["schemas"]["MateLineView"];
            /** @description The first side. */
            one: components["schemas"]["ExchangeSideView"];
            /** @description The other side. */
            other: components["schemas"]["ExchangeSideView"];
            /** @description The exchange that was asked about; null where nothing was given nor taken. */
            asked: components["schemas"]["AskedExchangeView"] | null;
            /** @description The exchanges of one animal for one after which both are more diverse than before, the best first: by the least of both gains, then by their sum, then by registry numbers. Empty where there is none. */
            proposals: components["schemas"]["ProposedExchangeView"][];
            /** @description How many exchanges of one for one were tried: every one there is. */
            tried: number;
            /** @description How many of them help both. */
            helping: number;
            /** @description What came of trying, in a sentence; null where none was to be proposed. */
            outcome: string | null;
            /** @description Which animals of both are not proposed, by reason. */
            notProposed: components["schemas"]["NotProposedView"][];
            /** @description What belongs beside the figures. */
            cautions: string[];
            /** @description The state of the register that the figures belong to. */
            asOf: components["schemas"]["AsOfView"];
        };
        GroupRequest: {
            /** @description Ids or registry numbers of 2 to 60 different animals that live together, or might. */
            individuals: string[];
            /** @description Also choose the best group of this many males out of the animals named; together with `females`. */
            males?: number;
            /** @description Also choose the best group of this many females out of the animals named; together with `males`. */
            females?: number;
            /** @description How much the inbreeding of the young weighs against their mean kinship with the line; 1 if left out. Greater: the young less inbred, the line less diverse. */
            weight?: number;
            /** @description Take animals of several lines: the young would be crosses. Refused if left out. */
            crossLines?: boolean;
            /** @description Greatest expected F of the young of any pair in the group chosen and in those that an addition would make, 0 to 1; 0.125 if left out, that of half-sibs. */
            inbreedingTo?: number;
            /** @description Also choose, and add, animals whose label is disputed: their young carry that on. No if left out. */
            disputed?: boolean;
        };
        GroupMemberView: {
            /** @description Id of the individual; "private-1" and so on, numbered within the answer, where it may not be seen. */
            id: string;
            /**
             * @description Registry number; null where it may not be seen.
             * @example 10704-4
             */
            number: string | null;
            /** @description The keeper's own code. */
            code: string | null;
            /**
             * @description Sex as recorded; unsexed where it may not be seen.
             * @enum {string}
             */
            sex: "male" | "female" | "unsexed";
            /** @description Whether it is a private animal that whoever asks may not see. */
            isPrivate: boolean;
            /** @description Its line; null without one. */
            line: components["schemas"]["MateLineView"] | null;
            /** @description Its keeper; empty where whoever asks may not see the animal. */
            keeper: string;
            /** @description Mean kinship with the living of the line of the group, 0 to 1 (Ballou & Lacy 1995); null where none of it lives, and for animals of unknown sex. */
            meanKinship: number | null;
            /**
             * @description Why it may not breed, the plainest reason; null where nothing stands against it.
             * @enum {string|null}
             */
            excluded: "not-living" | "keeper-left" | "unsexed" | "too-young" | "beyond-lifespan" | "disputed-label" | null;
        };
        GroupRowView: {
            /** @description F of the young with each of `females`, in their order: expected, and its range over the candidate parents of whichever of the two hatched later (Malécot 1948). */
            inbreeding: components["schemas"]["YoungInbreedingView"][];
        };
        InbreedingRangeView: {
            /** @description Expected inbreeding coefficient F over the candidate pairs, 0 to 1, without unit (Wright 1922). */
            expected: number;
            /** @description F if the least related candidate pair are the parents, 0 to 1. */
            least: number;
            /** @description F if the most related candidate pair are the parents, 0 to 1. */
            greatest: number;
        };
        GroupScoreView: {
            /** @description F of the young: expected over the pairs, and that of the least and of the most related pair (Malécot 1948). */
            inbreeding: components["schemas"]["InbreedingRangeView"];
            /** @description Mean kinship of the young with the living of the line, 0 to 1 (Ballou & Lacy 1995); null where none of the line lives. */
            youngMeanKinship: number | null;
            /** @description Mean kinship of the young + weight · F: the less the better. Without a living line, weight · F alone. */
            cost: number;
            /** @description How many pairs the group has. */
            pairs: number;
            /** @description In how many of them F counts as 0 for want of knowledge alone: all of them, and nothing is known. */
            nothingKnown: number;
        };
        GroupChangeView: {
            /** @description The animal. */
            animal: components["schemas"]["AnimalRef"];
            /** @description The group after the change. */
            after: components["schemas"]["GroupScoreView"];
            /** @description How much less the group costs afterwards; below 0 where it costs more. */
            gain: number;
        };
        BestGroupView: {
            /** @description Its males. */
            males: components["schemas"]["AnimalRef"][];
            /** @description Its females. */
            females: components["schemas"]["AnimalRef"][];
            /** @description What its young would be. */
            score: components["schemas"]["GroupScoreView"];
            /** @description What a keeper must know before housing them together. */
            warnings: string[];
        };
        GroupView: {
            /** @description The males of the group. */
            males: components["schemas"]["GroupMemberView"][];
            /** @description The females of the group. */
            females: components["schemas"]["GroupMemberView"][];
            /** @description Animals that do not count, since their sex is not known. */
            unsexed: components["schemas"]["GroupMemberView"][];
            /** @description Every sire with every dam: one row for each of `males`, in their order. */
            rows: components["schemas"]["GroupRowView"][];
            /** @description The group as it is; null without a male or without a female. */
            score: components["schemas"]["GroupScoreView"] | null;
            /** @description The group without one of its animals, the best first; those it would lose a side with are left out. */
            takeOut: components["schemas"]["GroupChangeView"][];
            /** @description The group with one more grown animal of its line, the best first, then those of which nothing is recorded, at most 10; of those that would make no pair above the limit of F. */
            add: components["schemas"]["GroupChangeView"][];
            /** @description The best group of the size asked for, exact, of the animals that may breed and without a pair above the limit of F; null where none was asked for, or there is none. */
            best: components["schemas"]["BestGroupView"] | null;
            /** @description Why there is no group of the size asked for, and what would help; null where there is one. */
            noBest: string | null;
            /** @description What a keeper must know before housing them together. */
            warnings: string[];
            /** @description The state of the register that the figures belong to. */
            asOf: components["schemas"]["AsOfView"];
        };
        PairCountsView: {
            /** @description Not decided. */
            proposed: number;
            /** @description Became pairings. */
            accepted: number;
            /** @description Are not to be made. */
            declined: number;
        };
        KeptPlanItemView: {
            /**
             * Format: uuid
             * @description Id of the record.
             */
            id: string;
            /** @description Counts the changes of the record from 1; also its ETag. */
            version: number;
            /**
             * Format: date-time
             * @description When it was entered, RFC 3339 in UTC.
             */
            createdAt: string;
            /**
             * Format: date-time
             * @description When it was last changed, RFC 3339 in UTC.
             */
            updatedAt: string;
            /** @description Set when the record was withdrawn; null while it stands. */
            withdrawn: components["schemas"]["WithdrawnView"] | null;
            /** @description Name of the keeper who entered it; null where a stranger asks. */
            keeper: string | null;
            /**
             * Format: uuid
             * @description Id of that keeper; null where a stranger asks.
             */
            keeperId: string | null;
            /** @description What it is called. */
            name: string;
            /** @description Notes. */
            notes: string | null;
            /** @description The line that it is for. */
            line: components["schemas"]["MateLineView"];
            /**
             * @description private: its keeper and the registrars read it; club: every member.
             * @enum {string}
             */
            visibility: "private" | "club";
            /** @description Revision of the register that it was made at. */
            revision: number;
            /** @description Whether the register changed since; what of it concerns the plan, the plan itself tells. */
            hasRegisterMoved: boolean;
            /** @description What became of its pairs. */
            pairCounts: components["schemas"]["PairCountsView"];
        };
        AssumedUsesView: {
            /** @description The animal. */
            animal: components["schemas"]["AnimalRef"];
            /** @description In how many pairs at most. */
            most: number;
        };
        AssumedPairView: {
            /** @description The male. */
            male: components["schemas"]["AnimalRef"];
            /** @description The female. */
            female: components["schemas"]["AnimalRef"];
        };
        NamedKeeperView: {
            /**
             * Format: uuid
             * @description Id of the keeper.
             */
            id: string;
            /** @description Name of the keeper. */
            name: string;
        };
        AssumptionsView: {
            /** @description Pairs wanted. */
            pairings: number;
            /** @description Weight w of kinship. */
            weight: number;
            /** @description Greatest expected F of the young of a pair. */
            inbreedingTo: number;
            /** @description In how many pairs an animal might be. */
            usesMost: number;
            /** @description Animals with another number of pairs. */
            uses: components["schemas"]["AssumedUsesView"][];
            /** @description The animals to choose among; null for all living ones of the line. */
            individuals: components["schemas"]["AnimalRef"][] | null;
            /** @description Animals of other lines besides. */
            also: components["schemas"]["AnimalRef"][];
            /** @description Pairs that had to be in it. */
            fixed: components["schemas"]["AssumedPairView"][];
            /** @description Pairs that must not be in it. */
            forbidden: components["schemas"]["AssumedPairView"][];
            /** @description Keepers whose animals are paired among themselves only. */
            keptTogether: components["schemas"]["NamedKeeperView"][];
            /** @description Pairs of two keepers at most; null for any number. */
            movesMost: number | null;
            /** @description Old animals that have not bred, at least. */
            reserve: number;
            /** @description From how many months on these counted as old. */
            reserveMonths: number;
            /** @description What was asked for besides. */
            allow: ("cross-lines" | "above-limit" | "disputed")[];
            /** @description Seconds that the choice might take. */
            seconds: number;
        };
        YoungFlagView: {
            /**
             * @description Which flag.
             * @enum {string}
             */
            code: "disputed-claim" | "mixed-labels" | "outside-line" | "label-changed" | "label-beyond-evidence" | "outside-range" | "export-route" | "date-conflict" | "origin-gap" | "country-only" | "parents-uncertain";
            /**
             * @description How grave it is.
             * @enum {string}
             */
            severity: "breaks" | "weakens" | "worth-knowing";
        };
        YoungLabelView: {
            /** @description Expected genome shares of the young by standing, best first; they sum to 1. */
            shares: components["schemas"]["StandingShareView"][];
            /** @description How much of the young would be traced to founders that carry their label on paper. */
            tracedShare: components["schemas"]["TracedShareView"];
            /** @description What an audit would hold against it, the gravest first. */
            flags: components["schemas"]["YoungFlagView"][];
        };
        OtherMateView: {
            /** @description That mate. */
            animal: components["schemas"]["AnimalRef"];
            /** @description What a pair with it would add to the sum less what the chosen one adds; below 0 where it would be better for this animal alone. */
            difference: number;
            /** @description Whether the plan uses that mate as often as it may be used. */
            isSpent: boolean;
        };
        MateAboveLimitView: {
            /** @description That mate. */
            animal: components["schemas"]["AnimalRef"];
            /** @description Expected F of the young with it, above the limit, 0 to 1 (Malécot 1948). */
            inbreeding: number;
            /** @description What a pair with it would add to the sum less what the pair with the chosen mate, or with the best one, adds; below 0. */
            difference: number;
        };
        MateRankView: {
            /** @description Its place by what the pair adds to the sum, 1 the best; equals share one. */
            rank: number;
            /** @description How many mates the animal may have. */
            of: number;
            /** @description The best other mate; null where there is none. */
            bestOther: components["schemas"]["OtherMateView"] | null;
            /** @description The best of the mates that would add less than the chosen one, but whose young would have F above the limit; null where there is none. */
            aboveLimit: components["schemas"]["MateAboveLimitView"] | null;
        };
        AlternativeView: {
            /**
             * @description `possible`: there is such a plan; `impossible`: there is none under these conditions; `unknown`: there was no time to find out, or it is fixed.
             * @enum {string}
             */
            is: "possible" | "impossible" | "unknown";
            /** @description How much greater its sum would be, 0 or more, in the unit of the sum; null unless possible. */
            extra: number | null;
            /** @description Whether that is the exact figure; else it is at least so much. */
            isExact: boolean;
        };
        KeptPlanAnimalView: {
            /** @description The animal. */
            animal: components["schemas"]["AnimalRef"];
            /** @description Its line; null without one. */
            line: components["schemas"]["MateLineView"] | null;
            /** @description Its age; null without a hatching date. */
            age: components["schemas"]["AgeView"] | null;
            /** @description Whether a clutch that is certainly its own has hatched. */
            proven: boolean;
            /** @description Whether it counts as an old animal that has not bred: not proven, and certainly `reserveMonths` old. */
            isReserve: boolean;
            /** @description Mean kinship with the living animals of the line, 0 to 1 (Ballou & Lacy 1995). */
            meanKinship: number;
            /** @description Its keeper then; null where the animal may not be seen. */
            keeper: string | null;
            /**
             * Format: uuid
             * @description Id of that keeper; null where the animal may not be seen.
             */
            keeperId: string | null;
        };
        PairingOfPairView: {
            /**
             * Format: uuid
             * @description Id of the pairing.
             */
            id: string;
            /** @description Its name. */
            name: string;
            /** @description Whether it was withdrawn. */
            isWithdrawn: boolean;
        };
        PairChangeView: {
            /**
             * @description What changed.
             * @enum {string}
             */
            kind: "withdrawn" | "merged" | "not-living" | "sex" | "species" | "keeper-left" | "too-young" | "beyond-lifespan" | "keeper" | "line" | "label" | "housed" | "bred" | "inbreeding" | "pairing-withdrawn";
            /** @description The animal that it concerns; null for the pair. */
            animal: components["schemas"]["AnimalRef"] | null;
            /** @description As it was then; null where that says nothing. */
            before: string | null;
            /** @description As it is now; null where that says nothing. */
            after: string | null;
            /** @description The change in words. */
            text: string;
            /** @description Whether the pair cannot be made any more. */
            stops: boolean;
        };
        LivesInView: {
            /** @description The animal. */
            animal: components["schemas"]["AnimalRef"];
            /**
             * Format: uuid
             * @description Id of the pairing.
             */
            id: string;
            /** @description Name of the pairing. */
            name: string;
        };
        PairNowView: {
            /** @description F of the young today, with its range; null where an animal is no longer in the register. */
            inbreeding: components["schemas"]["YoungInbreedingView"] | null;
            /** @description What is otherwise than then, as far as whoever asks may see it. */
            changes: components["schemas"]["PairChangeView"][];
            /** @description Where the two live otherwise, as far as that may be seen: they have to leave there (`moveOut`). */
            livesIn: components["schemas"]["LivesInView"][];
            /** @description What has to be asked for (`allow`) to accept it. */
            needs: ("cross-lines" | "above-limit" | "disputed")[];
            /** @description Why each of these has to be asked for: the warnings that a pairing of it carries. */
            warnings: string[];
            /** @description Whether it can become a pairing, where what it needs is asked for. */
            canBeAccepted: boolean;
        };
        KeptPlanPairView: {
            /** @description F of the young, which is the kinship of the two (Malécot 1948), with its range over the candidate parents of whichever of the two hatched later. The limit is held against the expected one. */
            inbreeding: components["schemas"]["YoungInbreedingView"];
            /** @description Mean kinship of the young with the living of the line: half of each parent’s, 0 to 1. */
            meanKinship: number;
            /** @description What the pair adds to the sum: mean kinship + w · kinship. */
            cost: number;
            /** @description Whether the two have different keepers, so that one has to move. */
            isMove: boolean;
            /** @description Whether the request fixed it. */
            isFixed: boolean;
            /** @description The label of the young. */
            label: components["schemas"]["YoungLabelView"];
            /** @description How the female stands among the mates of the male. */
            forMale: components["schemas"]["MateRankView"];
            /** @description How the male stands among the mates of the female. */
            forFemale: components["schemas"]["MateRankView"];
            /** @description The best plan without this pair. */
            without: components["schemas"]["AlternativeView"];
            /** @description Why it is in the plan, in words. */
            why: string[];
            /** @description What a keeper must know before: a cross, a disputed label, F above the limit, an age that nobody knows. */
            warnings: string[];
            /** @description Its place in the plan, from 0: its name for accepting and declining. */
            place: number;
            /** @description The male. */
            male: components["schemas"]["KeptPlanAnimalView"];
            /** @description The female. */
            female: components["schemas"]["KeptPlanAnimalView"];
            /**
             * @description What became of it.
             * @enum {string}
             */
            state: "proposed" | "accepted" | "declined";
            /** @description Why it was declined. */
            reason: string | null;
            /** @description The pairing that it became; null where it became none, or one that may not be seen. */
            pairing: components["schemas"]["PairingOfPairView"] | null;
            /** @description What it was accepted in spite of. */
            acceptedInSpiteOf: string[];
            /** @description The pair today. */
            now: components["schemas"]["PairNowView"];
        };
        PlanAnimalView: {
            /** @description The animal. */
            animal: components["schemas"]["AnimalRef"];
            /** @description Its line; null without one. */
            line: components["schemas"]["MateLineView"] | null;
            /** @description Its keeper. */
            keeper: string;
            /**
             * Format: uuid
             * @description Id of its keeper.
             */
            keeperId: string;
            /** @description Its age; null without a hatching date. */
            age: components["schemas"]["AgeView"] | null;
            /** @description Whether a clutch that is certainly its own has hatched. */
            proven: boolean;
            /** @description Whether it counts as an old animal that has not bred: not proven, and certainly `reserveMonths` old. */
            isReserve: boolean;
            /** @description Mean kinship with the living animals of the line, 0 to 1 (Ballou & Lacy 1995). */
            meanKinship: number;
        };
        LeftOutView: {
            /** @description The animal. */
            animal: components["schemas"]["PlanAnimalView"];
            /**
             * @description `unused`: the request says so; `no-mate`: it may have none; `mates-spent`: all its mates are used as often as they may be; `moves-spent`: it would have to move, or its mate; `as-good`: a plan with it is as good; `higher-mean-kinship`: higher than that of all of its sex in the plan; `dearer`: its pairs would add more.
             * @enum {string}
             */
            reason: "unused" | "no-mate" | "mates-spent" | "moves-spent" | "as-good" | "higher-mean-kinship" | "dearer";
            /** @description Why, in words. */
            why: string;
            /** @description How many mates it may have. */
            mates: number;
            /** @description The best of them; null without one. */
            bestMate: components["schemas"]["AnimalRef"] | null;
            /** @description The best of the mates that would add less than the best mate, but whose young would have F above the limit; null where there is none. */
            aboveLimit: components["schemas"]["MateAboveLimitView"] | null;
            /** @description The best plan that has it in a pair. */
            including: components["schemas"]["AlternativeView"];
        };
        PlanExcludedView: {
            /**
             * @description The reason; of several the plainest.
             * @enum {string}
             */
            reason: "not-living" | "keeper-left" | "unsexed" | "too-young" | "beyond-lifespan" | "disputed-label";
            /** @description The reason in words, and what would let these animals in. */
            detail: string;
            /** @description How many there are, of those that may be seen. Of the dead only those that the request names. */
            count: number;
            /** @description The first of them, at most 12. */
            animals: components["schemas"]["AnimalRef"][];
        };
        PlanObjectiveView: {
            /** @description Weight w of kinship. */
            weight: number;
            /** @description Σ mean kinship of the parents, half of each, over the pairs. */
            meanKinship: number;
            /** @description Σ kinship of the two over the pairs. */
            kinship: number;
            /** @description Σ mean kinship + w · Σ kinship: what the plan makes small. */
            sum: number;
            /** @description No plan under these conditions has a smaller sum. */
            bound: number;
            /** @description (sum − bound) / sum, 0 to 1: how much better another plan may be at most. */
            gap: number;
            /** @description Whether it is proven that no plan is better by more than 10⁻¹⁰ (1 + w). */
            isOptimal: boolean;
        };
        TradeOffView: {
            /** @description Weight w of kinship. */
            weight: number;
            /** @description Σ mean kinship of the parents over its pairs. */
            meanKinship: number;
            /** @description Σ kinship of the two over its pairs; divided by their number, mean F of the young. */
            kinship: number;
            /** @description How many of its pairs have animals of two keepers. */
            moves: number;
            /** @description Whether it is proven that none is better. */
            isOptimal: boolean;
        };
        PlanConditionView: {
            /**
             * @description Which one.
             * @enum {string}
             */
            condition: "pairs" | "inbreeding" | "lines" | "labels" | "moves" | "kept-together" | "reserve";
            /** @description Whether it is met. */
            isMet: boolean;
            /** @description In words. */
            detail: string;
        };
        PlanSinceView: {
            /**
             * @description `unchanged`: the register is as it was; `holds`: it changed, but nothing that concerns the pairs; `differs`: something does, yet the plan holds; `broken`: a pair cannot be made any more, or an assumption is not met.
             * @enum {string}
             */
            word: "unchanged" | "holds" | "differs" | "broken";
            /** @description The same in a sentence. */
            sentence: string;
            /** @description The assumptions, one by one; declined pairs do not count. */
            conditions: components["schemas"]["PlanConditionView"][];
            /** @description The state of the register that it is compared with. */
            asOf: components["schemas"]["AsOfView"];
        };
        KeptPlanView: {
            /**
             * Format: uuid
             * @description Id of the record.
             */
            id: string;
            /** @description Counts the changes of the record from 1; also its ETag. */
            version: number;
            /**
             * Format: date-time
             * @description When it was entered, RFC 3339 in UTC.
             */
            createdAt: string;
            /**
             * Format: date-time
             * @description When it was last changed, RFC 3339 in UTC.
             */
            updatedAt: string;
            /** @description Set when the record was withdrawn; null while it stands. */
            withdrawn: components["schemas"]["WithdrawnView"] | null;
            /** @description Name of the keeper who entered it; null where a stranger asks. */
            keeper: string | null;
            /**
             * Format: uuid
             * @description Id of that keeper; null where a stranger asks.
             */
            keeperId: string | null;
            /** @description What it is called. */
            name: string;
            /** @description Notes. */
            notes: string | null;
            /** @description The line that it is for. */
            line: components["schemas"]["MateLineView"];
            /**
             * @description private: its keeper and the registrars read it; club: every member.
             * @enum {string}
             */
            visibility: "private" | "club";
            /** @description Revision of the register that it was made at. */
            revision: number;
            /** @description Whether the register changed since; what of it concerns the plan, the plan itself tells. */
            hasRegisterMoved: boolean;
            /** @description What became of its pairs. */
            pairCounts: components["schemas"]["PairCountsView"];
            /** @description What it was asked to be. */
            assumptions: components["schemas"]["AssumptionsView"];
            /** @description Its pairs. */
            pairs: components["schemas"]["KeptPlanPairView"][];
            /** @description Animals that might breed then but are in no pair. */
            leftOut: components["schemas"]["LeftOutView"][];
            /** @description Who might not breed then, by reason. */
            excluded: components["schemas"]["PlanExcludedView"][];
            /** @description What it added up to. */
            objective: components["schemas"]["PlanObjectiveView"];
            /** @description The best plans under other weights, then. */
            tradeOff: components["schemas"]["TradeOffView"][];
            /** @description How many pairs had animals of two keepers. */
            moves: number;
            /** @description What belongs beside the figures. */
            cautions: string[];
            /** @description The state of the register that it was made at. */
            asOf: components["schemas"]["AsOfView"];
            /** @description What changed under it. */
            since: components["schemas"]["PlanSinceView"];
        };
        UsesRequest: {
            /** @description Id or registry number of the animal. */
            individual: string;
            /** @description In how many pairs it may be at most; 0 leaves it out. */
            most: number;
        };
        PairRequest: {
            /** @description Id or registry number of the male. */
            male: string;
            /** @description Id or registry number of the female. */
            female: string;
        };
        PlanRequest: {
            /** @description How many pairs are wanted. */
            pairings: number;
            /** @description Weight w, 1 if left out: the plan makes Σ mean kinship of the parents + w · Σ kinship of the two as small as it can be. A small one keeps the founders’ diversity, a great one avoids inbreeding of the next young. 0 counts as a millionth. */
            weight?: number;
            /** @description Greatest expected F of the young of a pair, 0 to 1; 0.125 if left out, that of half-sibs. */
            inbreedingTo?: number;
            /** @description In how many pairs an animal may be; 1 if left out. */
            usesMost?: number;
            /** @description Animals that may be used more or less often than the others. */
            uses?: components["schemas"]["UsesRequest"][];
            /** @description Ids or registry numbers of the animals to choose among; if left out, all living ones of the line. Those of other lines only with `cross-lines`. */
            individuals?: string[];
            /** @description Ids or registry numbers of animals of other lines that may be used besides, only with `cross-lines`. Each pair has at least one animal of the line. */
            also?: string[];
            /** @description Pairs that must be in the plan; they count among its pairs. */
            fixed?: components["schemas"]["PairRequest"][];
            /** @description Pairs that must not be in the plan. */
            forbidden?: components["schemas"]["PairRequest"][];
            /** @description Ids of keepers whose animals are paired among themselves only. */
            keptTogether?: string[];
            /** @description How many pairs may have animals of two keepers, so that one has to move; any number if left out. */
            movesMost?: number | null;
            /** @description How many old animals that have not bred must be in the plan at least; 0 if left out. Where fewer can be, there is no plan, and the answer says how many. */
            reserve?: number;
            /** @description From which age an animal that has not bred counts as old: certainly so many months of 30.4375 days; 48 if left out. */
            reserveMonths?: number;
            /** @description `cross-lines`: animals of other lines that the request names; `above-limit`: fixed pairs above the limit of F; `disputed`: animals whose label is disputed. Each is refused otherwise, and carries a warning where it is asked for. */
            allow?: ("cross-lines" | "above-limit" | "disputed")[];
            /** @description Seconds that the choice with its reasons and trade-off may take; 20 if left out. */
            seconds?: number;
        };
        NewKeptPlanRequest: {
            /**
             * Format: uuid
             * @description The line that it is for.
             */
            lineId: string;
            /** @description What the plan is called. */
            name: string;
            /** @description Notes. */
            notes?: string | null;
            /**
             * @description private, if left out: its keeper and the registrars read it; club: every member.
             * @enum {string}
             */
            visibility?: "private" | "club";
            /** @description What the plan is to be, as POST /lines/{id}/plan takes it. */
            assumptions: components["schemas"]["PlanRequest"];
            /** @description The pairs that whoever keeps it was shown. Where the plan comes out with others by now, it is not kept (409, with `pairs`). */
            shown?: components["schemas"]["PairRequest"][];
        };
        KeptPlanChangeRequest: {
            /** @description What the plan is called. */
            name?: string;
            /** @description Notes. */
            notes?: string | null;
            /**
             * @description private, if left out: its keeper and the registrars read it; club: every member.
             * @enum {string}
             */
            visibility?: "private" | "club";
        };
        AcceptedPairRequest: {
            /** @description Place of the pair in the plan, from 0. */
            place: number;
            /** @description Name of the pairing, such as the tank; if left out, the codes of the two, or the name of the plan. */
            name?: string;
        };
        AcceptPairsRequest: {
            /** @description The pairs, each once. */
            pairs: components["schemas"]["AcceptedPairRequest"][];
            /**
             * @description From when the two are housed together. EDTF level 1: 2021-04-12, 2021-04, 1994~, 199X, 1993/1996.
             * @example 2021-04-12
             */
            joined?: string | null;
            /** @description Whether the animals leave the pairings that they live in on that day, which has to be told then; only from pairings that whoever accepts may change. If left out, an animal that lives elsewhere is refused. */
            moveOut?: boolean;
            /** @description What is accepted in spite of: `cross-lines`, `above-limit` (of the plan), `disputed`. A pair that needs one is refused otherwise; else the pairing carries a warning. */
            allow?: ("cross-lines" | "above-limit" | "disputed")[];
        };
        PlacedPairRequest: {
            /** @description Place of the pair in the plan, from 0. */
            place: number;
        };
        DecidePairsRequest: {
            /** @description The pairs, each once. */
            pairs: components["schemas"]["PlacedPairRequest"][];
            /**
             * @description `declined`: not to be made; `proposed`: put back, also where the pairing that a pair became was withdrawn.
             * @enum {string}
             */
            state: "proposed" | "declined";
            /** @description Why they are declined. */
            reason?: string | null;
        };
        PossibleMateView: {
            /** @description The animal. */
            animal: components["schemas"]["AnimalRef"];
            /** @description Its line; null without one. */
            line: components["schemas"]["MateLineView"] | null;
            /** @description Its keeper. */
            keeper: string;
            /**
             * Format: uuid
             * @description Id of its keeper.
             */
            keeperId: string;
            /** @description Its age; null without a hatching date. */
            age: components["schemas"]["AgeView"] | null;
            /** @description Whether a clutch that is certainly its own has hatched. */
            proven: boolean;
            /** @description Its hatching date (EDTF); null where none is recorded. */
            hatched: string | null;
            /** @description F of the young, which is the kinship of the two (Malécot 1948), with its range over the candidate parents of whichever of the two hatched later. */
            inbreeding: components["schemas"]["YoungInbreedingView"];
            /** @description Mean kinship of the young with the living animals of the asked animal's line, 0 to 1: the mean of their parents' (Ballou & Lacy 1995). Null where none lives. */
            youngMeanKinship: number | null;
            /** @description What one young of the two would add to the gene diversity of the asked animal's line, 1 minus its mean kinship; below 0 where it would take from it. Null where none of the line lives. */
            diversityGain: number | null;
            /** @description Where its keeper lives, roughly; null where they do not say. */
            region: string | null;
            /** @description The label of the young. */
            label: components["schemas"]["YoungLabelView"];
            /** @description What a keeper must know before such a pairing: a cross, a disputed label, an age that nobody knows. */
            warnings: string[];
        };
        ExcludedMatesView: {
            /**
             * @description The reason; of several the plainest.
             * @enum {string}
             */
            reason: "not-living" | "keeper-left" | "unsexed" | "too-young" | "beyond-lifespan" | "disputed-label" | "other-species" | "related" | "other-line";
            /** @description The reason in words, and what would let these animals in. */
            detail: string;
            /** @description How many there are, of those that may be seen; null for animals of other lines, which are not counted. */
            count: number | null;
            /** @description The first of them, at most 12. */
            animals: components["schemas"]["AnimalRef"][];
        };
        MatesView: {
            /** @description The animal that was asked about. */
            animal: components["schemas"]["AnimalRef"];
            /** @description What speaks against breeding from the animal itself; empty where nothing does. */
            cautions: string[];
            /** @description Greatest kinship that was taken. */
            kinshipTo: number;
            /** @description One page of the mates, in the order asked for. */
            items: components["schemas"]["PossibleMateView"][];
            /** @description Send it as `after` to go on; null at the end. */
            next: string | null;
            /** @description How many mates there are in all. */
            total: number;
            /** @description Of how many of all these mates neither a source nor a parent is recorded. They would count as unrelated for want of knowledge, so they come last in either order. */
            nothingKnown: number;
            /** @description Who was left out, by reason. */
            excluded: components["schemas"]["ExcludedMatesView"][];
            /** @description Gene diversity of the living of the animal's line, 0 to 1; null where none lives. */
            geneDiversity: number | null;
            /** @description The state of the register that the figures belong to. */
            asOf: components["schemas"]["AsOfView"];
        };
        LackedFounderView: {
            /** @description The founder; null where a whole source is meant. */
            founder: components["schemas"]["AnimalRef"] | null;
            /** @description The source, or that of the founder; null for a founder of unknown origin. */
            source: components["schemas"]["ShareSourceView"] | null;
            /** @description Expected part of the genes of the living of the line that comes from it, 0 to 1. */
            inLine: number;
            /** @description Expected part of the genes of the holding that comes from it; 0: nothing of it is there. */
            inHolding: number;
        };
        BestYoungView: {
            /** @description The partner, of the holding. */
            partner: components["schemas"]["AnimalRef"];
            /** @description F of the young, which is the kinship of the two (Malécot 1948), with its range over candidate parents. */
            inbreeding: components["schemas"]["YoungInbreedingView"];
            /** @description What one young adds to the gene diversity of the holding. */
            gain: number;
        };
        BroughtFounderView: {
            /** @description The founder; null where a whole source is meant. */
            founder: components["schemas"]["AnimalRef"] | null;
            /** @description The source, or that of the founder; null for a founder of unknown origin. */
            source: components["schemas"]["ShareSourceView"] | null;
            /** @description Expected part of the genes of the living of the line that comes from it, 0 to 1. */
            inLine: number;
            /** @description Expected part of the genes of the holding that comes from it; 0: nothing of it is there. */
            inHolding: number;
            /** @description How much of the genome of the animal comes from it. */
            share: components["schemas"]["CarriedShareView"];
        };
        NewBloodAnimalView: {
            /** @description The animal. */
            animal: components["schemas"]["AnimalRef"];
            /** @description Its line; null without one. */
            line: components["schemas"]["MateLineView"] | null;
            /** @description Its keeper. */
            keeper: string;
            /**
             * Format: uuid
             * @description Id of its keeper.
             */
            keeperId: string;
            /** @description Its age; null without a hatching date. */
            age: components["schemas"]["AgeView"] | null;
            /** @description Whether a clutch that is certainly its own has hatched. */
            proven: boolean;
            /** @description Mean kinship with the animals of the holding, 0 to 1 (Ballou & Lacy 1995), itself included where it is one of them; null where nothing is held. */
            meanKinship: number | null;
            /** @description What the animal itself adds to the gene diversity of the holding, 1 minus mean kinship; null where it is one of them or nothing is held. */
            gain: number | null;
            /** @description One young with the best partner of the holding; null where nobody there may be its mate: all of the other sex are related above the limit, or there is none. */
            young: components["schemas"]["BestYoungView"] | null;
            /** @description Expected share of its genome from recorded founders of which the holding has nothing, 0 to 1. */
            lacking: number;
            /** @description Expected share of its genome from parents nobody knows, 0 to 1: these count as unrelated for want of knowledge. */
            unknown: number;
            /** @description Founders that it carries more of than the holding, of those that the holding lacks, at most 6. */
            brings: components["schemas"]["BroughtFounderView"][];
            /** @description How many such founders there are in all. */
            bringsCount: number;
            /** @description What an audit holds against its label, the gravest first. */
            flags: components["schemas"]["YoungFlagView"][];
            /** @description Whether it lives in a pairing now, as far as whoever asks may see that. */
            housed: boolean;
            /** @description What a keeper must know before: a cross, a disputed label, that it is housed, an open sex or age. */
            warnings: string[];
        };
        NewBloodView: {
            /** @description The line. */
            line: components["schemas"]["MateLineView"];
            /**
             * @description Who gets it.
             * @enum {string}
             */
            of: "keeper" | "line";
            /** @description The keeper; null for the whole line. */
            keeper: string | null;
            /**
             * Format: uuid
             * @description Id of the keeper; null as above.
             */
            keeperId: string | null;
            /**
             * @description How the animals are ordered.
             * @enum {string}
             */
            sort: "animal" | "young" | "lacking";
            /** @description What is held. */
            holding: components["schemas"]["HoldingView"];
            /** @description What lives of the whole line. */
            whole: components["schemas"]["HoldingView"];
            /** @description Founders of which the holding has less than the line, by what is missing, at most 24; of a whole line those that gave it less than an even part. */
            lacks: components["schemas"]["LackedFounderView"][];
            /** @description How many such founders there are in all. */
            lacksCount: number;
            /** @description One page of the animals, in the order asked for. */
            items: components["schemas"]["NewBloodAnimalView"][];
            /** @description Send it as `after` to go on; null at the end. */
            next: string | null;
            /** @description How many animals there are in all. */
            total: number;
            /** @description Who was left out, by reason. */
            excluded: components["schemas"]["ExcludedMatesView"][];
            /** @description What belongs beside the figures. */
            cautions: string[];
            /** @description The state of the register that the figures belong to. */
            asOf: components["schemas"]["AsOfView"];
        };
        PlanPairView: {
            /** @description The male. */
            male: components["schemas"]["PlanAnimalView"];
            /** @description The female. */
            female: components["schemas"]["PlanAnimalView"];
            /** @description F of the young, which is the kinship of the two (Malécot 1948), with its range over the candidate parents of whichever of the two hatched later. The limit is held against the expected one. */
            inbreeding: components["schemas"]["YoungInbreedingView"];
            /** @description Mean kinship of the young with the living of the line: half of each parent’s, 0 to 1. */
            meanKinship: number;
            /** @description What the pair adds to the sum: mean kinship + w · kinship. */
            cost: number;
            /** @description Whether the two have different keepers, so that one has to move. */
            isMove: boolean;
            /** @description Whether the request fixed it. */
            isFixed: boolean;
            /** @description The label of the young. */
            label: components["schemas"]["YoungLabelView"];
            /** @description How the female stands among the mates of the male. */
            forMale: components["schemas"]["MateRankView"];
            /** @description How the male stands among the mates of the female. */
            forFemale: components["schemas"]["MateRankView"];
            /** @description The best plan without this pair. */
            without: components["schemas"]["AlternativeView"];
            /** @description Why it is in the plan, in words. */
            why: string[];
            /** @description What a keeper must know before: a cross, a disputed label, F above the limit, an age that nobody knows. */
            warnings: string[];
        };
        PlanView: {
            /** @description The line. */
            line: components["schemas"]["MateLineView"];
            /** @description The pairs. */
            pairs: components["schemas"]["PlanPairView"][];
            /** @description Animals that may breed but are in no pair, the nearest to being used first. */
            leftOut: components["schemas"]["LeftOutView"][];
            /** @description Who may not breed, by reason. */
            excluded: components["schemas"]["PlanExcludedView"][];
            /** @description What the plan adds up to. */
            objective: components["schemas"]["PlanObjectiveView"];
            /** @description The best plans under seven weights and the asked one, by weight: what more of the one costs of the other. Shorter where the time was over. */
            tradeOff: components["schemas"]["TradeOffView"][];
            /** @description How many pairs have animals of two keepers. */
            moves: number;
            /** @description Seconds that the choice took, its reasons and the trade-off apart. */
            seconds: number;
            /** @description What belongs beside the figures. */
            cautions: string[];
            /** @description The state of the register that the plan was made at. */
            asOf: components["schemas"]["AsOfView"];
        };
        PlannedPairRequest: {
            /** @description The sire: id or registry number of a living male. */
            sire: string;
            /** @description The dam: id or registry number of a living female. */
            dam: string;
        };
        PlanForecastRequest: {
            /** @description The pairs of the plan, 1 to 300; an animal may stand in several, each two animals once. May be left out where `courses` asks for `today` alone. */
            pairs?: components["schemas"]["PlannedPairRequest"][];
            /** @description What is compared; all three if left out. plan: these pairs, their young paired again with least kinship; today: the groups and pairs of the line that stand in the register now; random: the breeders of the plan and their young, mated at random. */
            courses?: ("plan" | "today" | "random")[];
            /** @description Generations that are bred, 1 to 10; 5 if left out. */
            generations?: number;
            /** @description Young of each pair, or of each dam of a group, that grow up, 2 to 20; 4 if left out. */
            youngKept?: number;
            /** @description How often the generations are bred, 100 to 10 000; 1000 if left out. */
            replicates?: number;
            /** @description Unlinked loci whose genes are followed in each replicate, 1 to 64; 32 if left out. With 1 the intervals say what one gene may meet; with many they come near to the whole genome. */
            loci?: number;
            /** @description Seed of the drawing: the same seed, question and revision of the register give the same answer, to the last digit; 1 if left out. */
            seed?: number;
            /** @description Take pairs with animals of another line or of none, too: their young would be a cross. No if left out. */
            crossLines?: boolean;
        };
        ForecastFigureView: {
            /** @description Mean over the replicates, 0 to 1. */
            mean: number;
            /** @description Standard error of the mean: how far it may be off because no more replicates were drawn. It says nothing of how far one future may lie from the mean. */
            standardError: number;
            /** @description Interval of the outcome: 95 % of the replicates lie from here to `to`, 2.5 % below. 0 to 1. */
            from: number;
            /** @description End of the interval of the outcome; 2.5 % of the replicates lie above. 0 to 1. */
            to: number;
            /** @description The least of all replicates, 0 to 1. */
            least: number;
            /** @description The greatest of all replicates, 0 to 1. */
            greatest: number;
            /** @description What kinship expects (Malécot 1948), 0 to 1, computed without drawing; the mean lies about it by its standard error. Null where who mates with whom is drawn. */
            expected: number | null;
        };
        ForecastOutcomeView: {
            /** @description Mean over the replicates, 0 to 1. */
            mean: number;
            /** @description Standard error of the mean: how far it may be off because no more replicates were drawn. It says nothing of how far one future may lie from the mean. */
            standardError: number;
            /** @description Interval of the outcome: 95 % of the replicates lie from here to `to`, 2.5 % below. 0 to 1. */
            from: number;
            /** @description End of the interval of the outcome; 2.5 % of the replicates lie above. 0 to 1. */
            to: number;
            /** @description The least of all replicates, 0 to 1. */
            least: number;
            /** @description The greatest of all replicates, 0 to 1. */
            greatest: number;
        };
        ForecastGenerationView: {
            /** @description 0 the breeders, 1 their young, and so on. */
            generation: number;
            /** @description Animals of the generation that figures are taken of. */
            animals: number;
            /** @description Gene diversity: 1 − mean kinship of the animals of the generation, each with itself included (Lacy 1989), 0 to 1, against unrelated founders. */
            diversity: components["schemas"]["ForecastFigureView"];
            /** @description Mean inbreeding coefficient F of the animals of the generation, 0 to 1 (Wright 1922). */
            inbreeding: components["schemas"]["ForecastFigureView"];
            /** @description Share of each of `origins` in the genes of the generation, in their order, 0 to 1. */
            shares: components["schemas"]["ForecastOutcomeView"][];
            /** @description Share of all other origins together; the means of all shares sum to 1. */
            otherShare: components["schemas"]["ForecastOutcomeView"];
        };
        ForecastCourseView: {
            /**
             * @description plan: the given pairs; today: the groups of the register; random: the breeders of the plan at random.
             * @enum {string}
             */
            course: "plan" | "today" | "random";
            /** @description By which rule later generations are mated, in plain words; to be shown beside the figures. */
            rule: string;
            /** @description Sires that breed in the first generation. */
            sires: number;
            /** @description Dams that breed in the first generation. */
            dams: number;
            /** @description Clutches in each generation, each of one sire and one dam. */
            clutches: number;
            /** @description The generations, the breeders first. */
            generations: components["schemas"]["ForecastGenerationView"][];
        };
        MissingCourseView: {
            /**
             * @description Which one.
             * @enum {string}
             */
            course: "plan" | "today" | "random";
            /** @description Why, and what would help. */
            detail: string;
        };
        OriginView: {
            /** @description The source that the founders came from. */
            source?: components["schemas"]["ShareSourceView"];
            /** @description A founder of unknown origin. */
            founder?: components["schemas"]["AnimalRef"];
            /** @description The clutch of which a parent is unknown. */
            unknownParentOf?: components["schemas"]["ShareClutchView"];
            /**
             * @description How well it stands, by rule, under the label asked about: unknown for a parent that nobody knows, for a founder of unknown origin of which nothing is claimed, and for what may not be seen.
             * @enum {string}
             */
            standing: "documented" | "corroborated" | "stated" | "by-looks" | "disputed" | "unknown";
        };
        PlanForecastView: {
            /** @description The courses asked for, as far as they can be forecast. */
            courses: components["schemas"]["ForecastCourseView"][];
            /** @description Courses asked for that cannot be forecast. */
            missing: components["schemas"]["MissingCourseView"][];
            /** @description Where the genes of the breeders begin: the 24 origins with the largest shares, those first. */
            origins: components["schemas"]["OriginView"][];
            /** @description How many other origins there are. */
            otherOrigins: number;
            /** @description How often the generations were bred (gene dropping, MacCluer et al. 1986): each time the parents of uncertain clutches among the ancestors, the genes handed on and, but for the plan, the mates are drawn anew. */
            replicates: number;
            /** @description Unlinked loci followed in each replicate. */
            loci: number;
            /** @description Young of each clutch that grow up. */
            youngKept: number;
            /** @description Seed of the drawing. */
            seed: number;
            /** @description What must be kept in mind with these figures, in plain sentences; to be shown beside them. */
            cautions: string[];
            /** @description Whether the figures follow every change of the register; false while figures of some breeders are still being recomputed. */
            current: boolean;
            /** @description The state of the register that the figures belong to. */
            asOf: components["schemas"]["AsOfView"];
        };
        SigningKeyView: {
            /** @description Its thumbprint (RFC 7638, SHA-256, base64url), by which sheets name it. */
            kid: string;
            /**
             * Format: date-time
             * @description Since when it signs, RFC 3339 in UTC.
             */
            usedFrom: string;
            /**
             * Format: date-time
             * @description Until when it did; null while it does.
             */
            usedUntil: string | null;
            /** @description Why it is used no more; null while it is. */
            reason: string | null;
            /** @description Whether the copy of the service that answers signs with it. */
            isOwn: boolean;
        };
        SigningKeysView: {
            /** @description Every key that ever signed, the newest first. */
            items: components["schemas"]["SigningKeyView"][];
        };
        KeyRetirementRequest: {
            /**
             * @description Why it is used no more. Administrators read it in the journal.
             * @example The computer that held it was sold.
             */
            reason: string;
        };
        PublishedKeyView: {
            /**
             * @description Kind of key.
             * @enum {string}
             */
            kty: "OKP";
            /**
             * @description Its curve.
             * @enum {string}
             */
            crv: "Ed25519";
            /**
             * @description The algorithm that it is for.
             * @enum {string}
             */
            alg: "EdDSA";
            /**
             * @description What it is for: signatures.
             * @enum {string}
             */
            use: "sig";
            /** @description Its thumbprint (RFC 7638), by which sheets name it. */
            kid: string;
            /** @description The public key, 32 bytes, base64url. */
            x: string;
            /**
             * Format: date-time
             * @description Since when it signs, RFC 3339 in UTC.
             */
            usedFrom: string;
            /**
             * Format: date-time
             * @description Until when it did; null while it does. What says that it was issued later is not genuine.
             */
            usedUntil: string | null;
        };
        PublishedKeysView: {
            /** @description Every key that ever signed: what an old key signed stays genuine. */
            keys: components["schemas"]["PublishedKeyView"][];
        };
        RevocationView: {
            /**
             * Format: date-time
             * @description When, RFC 3339 in UTC.
             */
            at: string;
            /** @description Why, in the words of whoever revoked it. */
            reason: string;
        };
        NewerSheetView: {
            /**
             * @description Registry number of the animal.
             * @example 10704-4
             */
            animal: string;
            /**
             * @description Number of the newest sheet of it that was not revoked.
             * @example PS-1002-0
             */
            number: string;
            /**
             * Format: date-time
             * @description When that one was issued, RFC 3339 in UTC.
             */
            issued: string;
        };
        SheetAnimalView: {
            /** @description Id of the animal; "private-1" and so on, numbered within the answer, where it may not be seen. */
            id: string;
            /**
             * @description Its registry number; null where it may not be seen.
             * @example 10704-4
             */
            number: string | null;
            /** @description Whether it is a private animal that whoever asks may not see. */
            isPrivate: boolean;
        };
        SheetView: {
            /**
             * Format: uuid
             * @description Id of the sheet.
             */
            id: string;
            /** @description Version, which changes when it is revoked. */
            version: number;
            /**
             * @description Number of the sheet, with its check character.
             * @example PS-1001-2
             */
            number: string;
            /** @description Name of the keeper whose animals it tells of. */
            keeper: string;
            /**
             * Format: uuid
             * @description Id of that keeper.
             */
            keeperId: string;
            /**
             * Format: date-time
             * @description When it was issued, RFC 3339 in UTC.
             */
            issued: string;
            /**
             * Format: date
             * @description Last day on which it is valid, in UTC; null: until it is replaced or revoked.
             */
            validUntil: string | null;
            /**
             * @description Whether it still stands. valid; expired: its last day is over; superseded: each of its animals stands on a newer sheet that was not revoked; revoked.
             * @enum {string}
             */
            state: "valid" | "expired" | "superseded" | "revoked";
            /** @description That and why it was revoked; null where it was not. */
            revoked: components["schemas"]["RevocationView"] | null;
            /** @description Newer sheets of those of its animals that may be seen. */
            newer: components["schemas"]["NewerSheetView"][];
            /** @description Its animals, in the order in which they stand on it. */
            animals: components["schemas"]["SheetAnimalView"][];
            /** @description Thumbprint of the key that it is signed with. */
            keyId: string;
            /**
             * @description Address of its public page, which its QR code leads to; a path where the register has no address of its own (PUBLIC_URL). Whoever knows it can read the sheet.
             * @example /s/7hC0wGk2mYb1QzXv4nEr9aTf
             */
            lookUp: string;
        };
        NewSheetRequest: {
            /** @description Ids or registry numbers of the animals, 1 to 50, all of one keeper. None may be private: a sheet is for strangers. */
            animals: string[];
            /**
             * @description Last day on which it is valid, in UTC: not before today, and at most 30 years on. Left out: until it is replaced or revoked.
             * @example 2027-04-12
             */
            validUntil?: string;
            /** @description Whether photographs of the animals stand on it, and whoever holds it may look at them; true if left out. */
            photographs?: boolean;
            /** @description Whether it names the keeper of the animals; true if left out. Only the keeper can let it: a sheet that a registrar makes of the animals of another names nobody. */
            keeperNamed?: boolean;
        };
        SheetRevocationRequest: {
            /**
             * @description Why. Everybody who opens its public page reads it.
             * @example The froglets were mixed up.
             */
            reason: string;
        };
        SheetVerificationView: {
            /**
             * @description What its bytes and the keys of this register say: genuine; expired: genuine, but its last day is over; changed after it was signed; unknown-key: signed with a key that is not of this register; key-out-of-use: dated when its key was not in use; not-canonical: written anew by a program or a person; malformed: no sheet.
             * @enum {string}
             */
            outcome: "genuine" | "expired" | "changed" | "unknown-key" | "key-out-of-use" | "not-canonical" | "malformed";
            /**
             * @description Whose it is: of this register; of another one, which its issuer names; unknown where that cannot be said.
             * @enum {string}
             */
            whose: "this-register" | "another-register" | "unknown";
            /** @description All of it in plain sentences. */
            words: string;
            /** @description Number that the file names; null where it cannot be read. To be believed only where it is genuine. */
            number: string | null;
            /** @description Name of the register that the file names as its issuer; null where it cannot be read. */
            issuer: string | null;
            /** @description Address of the register that the file names; null where it names none. */
            issuerAddress: string | null;
            /**
             * @description Whether it still stands; null where this register did not issue it.
             * @enum {string|null}
             */
            state: "valid" | "expired" | "superseded" | "revoked" | null;
            /** @description Path of its public page; null where this register did not issue it. */
            lookUp: string | null;
        };
        DifferenceView: {
            /**
             * @description What differs.
             * @enum {string}
             */
            field: "species" | "sex" | "status" | "hatched" | "out-of-water" | "line" | "label-standing" | "traced-share" | "inbreeding" | "depth" | "parents";
            /** @description What the sheet says, in words; null: nothing. */
            then: string | null;
            /** @description What the register says today, in words; null: nothing. */
            now: string | null;
        };
        AnimalTodayView: {
            /**
             * @description Registry number of the animal as the sheet has it; null where the register tells strangers nothing of it today.
             * @example 10704-4
             */
            number: string | null;
            /** @description Whether the register tells of it today. False where its record was withdrawn, or is kept private. */
            isTold: boolean;
            /** @description Number of the record that goes on in its place, where it was found to be the same animal. */
            continuesAs: string | null;
            /** @description What the register says otherwise than on the day of issue; empty where nothing, or where it tells nothing. */
            differences: components["schemas"]["DifferenceView"][];
        };
        PublicSheetView: {
            /**
             * @description Number of the sheet.
             * @example PS-1001-2
             */
            number: string;
            /** @description Name of the register that issued it. */
            register: string;
            /** @description Whether everything in that register is invented, to look around in. */
            isInvented: boolean;
            /**
             * Format: date-time
             * @description When it was issued, RFC 3339 in UTC.
             */
            issued: string;
            /**
             * Format: date
             * @description Last day on which it is valid, in UTC; null: until it is replaced or revoked.
             */
            validUntil: string | null;
            /**
             * @description What its signature says, checked anew for this answer: genuine or expired, if all is well.
             * @enum {string}
             */
            outcome: "genuine" | "expired" | "changed" | "unknown-key" | "key-out-of-use" | "not-canonical" | "malformed";
            /**
             * @description Whether it still stands: valid; expired; superseded: each of its animals stands on a newer sheet; revoked.
             * @enum {string}
             */
            state: "valid" | "expired" | "superseded" | "revoked";
            /** @description Both in plain sentences. */
            words: string;
            /** @description That and why it was revoked; null where it was not. */
            revoked: components["schemas"]["RevocationView"] | null;
            /** @description Newer sheets of its animals. */
            newer: components["schemas"]["NewerSheetView"][];
            /** @description Thumbprint of the key that it is signed with. */
            keyId: string;
            /** @description What the sheet says: the member `sheet` of its file, format 1. What became private since is concealed in it. Null where it was revoked, or where the register tells nothing of one of its animals today. */
            contents: {
                [key: string]: unknown;
            } | null;
            /** @description Whether the signed file is given out here: not while anything in it is private, or it is revoked. */
            hasFile: boolean;
            /** @description Its animals today, in the order in which they stand on it. */
            today: components["schemas"]["AnimalTodayView"][];
        };
        TransferKeeperView: {
            /**
             * Format: uuid
             * @description Id of the keeper.
             */
            id: string;
            /** @description Name of the keeper. */
            name: string;
        };
        TransferItemView: {
            /**
             * Format: uuid
             * @description Id of the transfer.
             */
            id: string;
            /** @description Counts its changes from 1; also its ETag. */
            version: number;
            /**
             * Format: date-time
             * @description When it was entered, RFC 3339 in UTC.
             */
            createdAt: string;
            /**
             * Format: date-time
             * @description When it was last changed, RFC 3339 in UTC.
             */
            updatedAt: string;
            /**
             * @description handover: to another keeper; departure: out of the club.
             * @enum {string}
             */
            kind: "handover" | "departure";
            /**
             * @description offered: it waits for an answer. accepted: the animals changed hands; a departure is accepted from the start. declined, withdrawn: nothing changed hands, or a departure was put back.
             * @enum {string}
             */
            state: "offered" | "accepted" | "declined" | "withdrawn";
            /** @description Who gives. */
            from: components["schemas"]["TransferKeeperView"];
            /** @description Who receives; null where they left the club. */
            to: components["schemas"]["TransferKeeperView"] | null;
            /** @description Who took the animals out of the club, in the words of the giver; null to everybody but the giver and registrars. */
            leftTo: string | null;
            /** @description When they change or changed hands, EDTF; null where that is open. */
            date: string | null;
            /** @description How many animals. */
            count: number;
            /** @description The first three of them, by number. */
            first: components["schemas"]["AnimalStatusView"][];
        };
        TransferAnimalView: {
            /** @description Id of the animal; "private-1" and so on, numbered within the answer, where it may not be seen. */
            id: string;
            /**
             * @description Registry number with its check character; null where it may not be seen.
             * @example 10704-4
             */
            number: string | null;
            /** @description The keeper's own code. */
            code: string | null;
            /**
             * @description Sex; unsexed where it may not be seen.
             * @enum {string}
             */
            sex: "male" | "female" | "unsexed";
            /** @description Whether it is a private animal that whoever asks may not see. */
            isPrivate: boolean;
            /**
             * @description Whether it lives; unknown where it may not be seen.
             * @enum {string}
             */
            status: "alive" | "died" | "gone" | "unknown";
            /** @description Scientific name; null where it may not be seen. */
            species: string | null;
            /** @description Name of its line; null where it has none or may not be seen. */
            line: string | null;
            /** @description When it hatched, EDTF; null where it may not be seen. */
            hatched: string | null;
            /** @description When it left the water, EDTF; null where it may not be seen. */
            outOfWater: string | null;
            /** @description The giver's own code for it; null where it had none, to others than the two keepers, and where it may not be seen. */
            givenCode: string | null;
            /** @description When it came back after it had left the club, EDTF; null while it has not. */
            returned: string | null;
        };
        TransferWarningView: {
            /**
             * Format: uuid
             * @description Id of the animal.
             */
            individualId: string;
            /**
             * @description stay-ends: it lives in a pairing, where its stay ends on the day on which it passes. in-water: nobody noted that it left the water.
             * @enum {string}
             */
            code: "stay-ends" | "in-water";
            /** @description The same in words. */
            detail: string;
        };
        TransferView: {
            /**
             * Format: uuid
             * @description Id of the transfer.
             */
            id: string;
            /** @description Counts its changes from 1; also its ETag. */
            version: number;
            /**
             * Format: date-time
             * @description When it was entered, RFC 3339 in UTC.
             */
            createdAt: string;
            /**
             * Format: date-time
             * @description When it was last changed, RFC 3339 in UTC.
             */
            updatedAt: string;
            /**
             * @description handover: to another keeper; departure: out of the club.
             * @enum {string}
             */
            kind: "handover" | "departure";
            /**
             * @description offered: it waits for an answer. accepted: the animals changed hands; a departure is accepted from the start. declined, withdrawn: nothing changed hands, or a departure was put back.
             * @enum {string}
             */
            state: "offered" | "accepted" | "declined" | "withdrawn";
            /** @description Who gives. */
            from: components["schemas"]["TransferKeeperView"];
            /** @description Who receives; null where they left the club. */
            to: components["schemas"]["TransferKeeperView"] | null;
            /** @description Who took the animals out of the club, in the words of the giver; null to everybody but the giver and registrars. */
            leftTo: string | null;
            /** @description When they change or changed hands, EDTF; null where that is open. */
            date: string | null;
            /** @description How many animals. */
            count: number;
            /** @description The first three of them, by number. */
            first: components["schemas"]["AnimalStatusView"][];
            /** @description A note for the two keepers and registrars; null to others. */
            note: string | null;
            /** @description Why it was declined or withdrawn; null to others than the two keepers and registrars. */
            reason: string | null;
            /** @description Name of who brought it into this state; null while it waits. */
            settledBy: string | null;
            /**
             * Format: date-time
             * @description When it came into this state, RFC 3339 in UTC; null while it waits.
             */
            settledAt: string | null;
            /** @description All of them, by number, those that may not be seen last. */
            animals: components["schemas"]["TransferAnimalView"][];
            /** @description What to think of while it waits; empty once it was answered. */
            warnings: components["schemas"]["TransferWarningView"][];
            /** @description What whoever asks can do with it now. */
            steps: ("accept" | "decline" | "withdraw" | "return")[];
        };
        NewTransferRequest: {
            /**
             * Format: uuid
             * @description The keeper of the club to whom the animals are offered; not with leftTo.
             */
            to?: string;
            /**
             * @description The animals left the club: to whom, in your own words, or null where that is not noted. Only you and registrars read it.
             * @example a school terrarium in the next town
             */
            leftTo?: string | null;
            /** @description The animals: ids or registry numbers, all of one keeper; not with clutch. */
            animals?: string[];
            /**
             * Format: uuid
             * @description All living young of this clutch that the giver keeps and that are not on offer, at most 200; not with animals.
             */
            clutch?: string;
            /**
             * @description When they change hands, if that is known; of a departure when they left, today (UTC) if left out. EDTF level 1: 2021-04-12, 2021-04, 1994~, 199X, 1993/1996.
             * @example 2021-04-12
             */
            date?: string | null;
            /** @description A note that the two keepers and registrars read. */
            note?: string | null;
        };
        TakenCodeRequest: {
            /** @description The animal: its id or its registry number. */
            individualId: string;
            /**
             * @description The receiver's own code for it, unique for the receiver; null for none.
             * @example B-12
             */
            code: string | null;
        };
        AcceptanceRequest: {
            /**
             * @description When they changed hands. If left out the date of the offer, where that is not later than today, else today (UTC). EDTF level 1: 2021-04-12, 2021-04, 1994~, 199X, 1993/1996.
             * @example 2021-04-12
             */
            date?: string;
            /** @description Codes of the receiver; an animal that is not named here keeps the code it has. */
            codes?: components["schemas"]["TakenCodeRequest"][];
        };
        TransferReasonRequest: {
            /** @description Why; the two keepers and registrars read it. */
            reason?: string | null;
        };
        ReturnRequest: {
            /** @description Those that came back: ids or registry numbers; all that have not yet if left out. */
            animals?: string[];
            /**
             * @description When; today (UTC) if left out. EDTF level 1: 2021-04-12, 2021-04, 1994~, 199X, 1993/1996.
             * @example 2021-04-12
             */
            date?: string;
        };
        ComingView: {
            /** @description How many. */
            count: number;
            /**
             * Format: date
             * @description The first day on which one of them may be due, YYYY-MM-DD.
             */
            from: string;
        };
        DueClutchesView: {
            /** @description Those whose window is open or closed less than 61 days ago, the latest first. */
            items: components["schemas"]["ClutchItemView"][];
            /** @description How many there are in all. */
            total: number;
            /** @description What comes within 14 days; null where nothing does. */
            coming: components["schemas"]["ComingView"] | null;
            /** @description How many are longer overdue, or have no day to reckon from, counted to 1001. */
            older: number;
        };
        SexingAnimalView: {
            /** @description Id of the animal; "private-1" and so on, numbered within the answer, where it may not be seen. */
            id: string;
            /**
             * @description Registry number with its check character; null where it may not be seen.
             * @example 10704-4
             */
            number: string | null;
            /** @description The keeper's own code. */
            code: string | null;
            /**
             * @description Sex; unsexed where it may not be seen.
             * @enum {string}
             */
            sex: "male" | "female" | "unsexed";
            /** @description Whether it is a private animal that whoever asks may not see. */
            isPrivate: boolean;
            /**
             * @description Whether it lives; unknown where it may not be seen.
             * @enum {string}
             */
            status: "alive" | "died" | "gone" | "unknown";
            /** @description Counts the changes of its record from 1; also its ETag. */
            version: number;
            /**
             * Format: uuid
             * @description Id of its keeper.
             */
            keeperId: string;
        };
        SexingGroupView: {
            /**
             * Format: uuid
             * @description Id of their clutch; null where they have none, or where it may not be seen.
             */
            clutchId: string | null;
            /** @description Scientific name. */
            species: string;
            /** @description When the first of them hatched, EDTF. */
            hatched: string;
            /** @description Whole months since then, at least (months of 30.4375 days). */
            months: number;
            /** @description The pairing that all of them live in; null where they live apart, or where it may not be seen. */
            pairing: components["schemas"]["ClutchPairingView"] | null;
            /** @description The animals, by number. */
            animals: components["schemas"]["SexingAnimalView"][];
        };
        SexingView: {
            /** @description By clutch, those who became old enough last first. */
            groups: components["schemas"]["SexingGroupView"][];
            /** @description How many animals are shown. */
            shown: number;
            /** @description How many there are, counted to 1001. */
            total: number;
        };
        DueTransfersView: {
            /** @description Offers to whoever asks, newest first. */
            items: components["schemas"]["TransferItemView"][];
            /** @description How many there are in all. */
            total: number;
        };
        DueReviewView: {
            /**
             * Format: uuid
             * @description Id of the evidence.
             */
            id: string;
            /**
             * @description What kind of document it is.
             * @enum {string}
             */
            kind: "collecting-permit" | "export-permit" | "field-note" | "publication" | "importers-list" | "invoice" | "letter" | "other-document" | "appearance";
            /** @description Which document it is, in words. */
            reference: string;
            /** @description What the claim says that it bears on. */
            claim: string;
            /** @description What the claim is about, in words; null where that may not be seen. */
            about: string | null;
            /** @description Name of who brought it. */
            keeper: string;
            /**
             * Format: date-time
             * @description When it was brought, RFC 3339 in UTC.
             */
            createdAt: string;
        };
        DueReviewsView: {
            /** @description The longest waiting first; empty for who may not review. */
            items: components["schemas"]["DueReviewView"][];
            /** @description How many there are in all. */
            total: number;
        };
        WarnedRecordView: {
            /**
             * @description Whether it is an animal or a clutch.
             * @enum {string}
             */
            kind: "animal" | "clutch";
            /**
             * Format: uuid
             * @description Id of the record.
             */
            id: string;
            /** @description What people call it: an animal's code or number, a clutch's title. */
            title: string;
            /** @description Its warnings, at least one. */
            warnings: components["schemas"]["WarningView"][];
        };
        DueWarningsView: {
            /** @description Animals before clutches, newest first. */
            items: components["schemas"]["WarnedRecordView"][];
            /** @description How many were found in all among those looked at. */
            total: number;
            /** @description How many of the newest records were looked at, of each kind at most. */
            lookedAt: number;
        };
        ProfileGapView: {
            /**
             * Format: uuid
             * @description Id of the species.
             */
            speciesId: string;
            /** @description Scientific name. */
            species: string;
            /** @description What its profile lacks. */
            missing: ("laying-to-hatching" | "hatching-to-leaving-water" | "maturity" | "sexable-by-looks" | "eggs-per-clutch" | "between-clutches" | "snout-vent-male" | "snout-vent-female" | "lifespan")[];
        };
        TodayView: {
            /**
             * Format: date
             * @description The day that this is reckoned for, YYYY-MM-DD.
             */
            on: string;
            /**
             * @description Whose animals and clutches were looked at.
             * @enum {string}
             */
            of: "mine" | "club";
            /** @description Eggs that should hatch. */
            hatching: components["schemas"]["DueClutchesView"];
            /** @description Tadpoles that should leave the water. */
            leavingWater: components["schemas"]["DueClutchesView"];
            /** @description Living animals without a sex that are old enough to tell. */
            sexing: components["schemas"]["SexingView"];
            /** @description Animals offered to whoever asks. */
            transfers: components["schemas"]["DueTransfersView"];
            /** @description Evidence of others to review. */
            reviews: components["schemas"]["DueReviewsView"];
            /** @description Records that look implausible, where nobody accepted that. */
            warnings: components["schemas"]["DueWarningsView"];
            /** @description Species kept of whose profile something is missing that days are reckoned from. */
            profiles: components["schemas"]["ProfileGapView"][];
            /** @description Whether whoever asks keeps an animal, alive or not. */
            keepsAnimals: boolean;
            /** @description Whether whoever asks has a pairing. */
            keepsPairings: boolean;
        };
        CreatedCounts: {
            /** @description Animals. */
            individuals: number;
            /** @description Clutches. */
            clutches: number;
            /** @description Sources. */
            sources: number;
            /** @description Lines. */
            lines: number;
            /** @description Species. */
            species: number;
        };
        ImportWarning: {
            /** @description Row as a spreadsheet shows it; the header is row 1. */
            row: number;
            /**
             * @description Column, as its header names it.
             * @example laid
             */
            column: string;
            /** @description What was found, in words. */
            detail: string;
        };
        ImportView: {
            /**
             * Format: uuid
             * @description Id of the import; null where the sheet was only checked.
             */
            id: string | null;
            /** @description Animals in the sheet. */
            rows: number;
            /** @description What the sheet made, or would make. */
            created: components["schemas"]["CreatedCounts"];
            /** @description What should be looked at, by row; the first 1000. */
            warnings: components["schemas"]["ImportWarning"][];
            /** @description How many warnings there are in all. */
            warningCount: number;
        };
        PastImportView: {
            /**
             * Format: uuid
             * @description Id of the import.
             */
            id: string;
            /**
             * Format: date-time
             * @description When it was made, RFC 3339 in UTC.
             */
            createdAt: string;
            /** @description Name of the keeper who made it. */
            keeper: string;
            /**
             * Format: uuid
             * @description Id of the keeper who made it.
             */
            keeperId: string;
            /** @description Animals in the sheet. */
            rows: number;
            /** @description What the sheet made. */
            created: components["schemas"]["CreatedCounts"];
            /** @description How many warnings there were. */
            warningCount: number;
            /** @description Set when the import was undone; null while it stands. */
            withdrawn: components["schemas"]["WithdrawnView"] | null;
        };
        WholeImportView: {
            /**
             * Format: uuid
             * @description Id of the import.
             */
            id: string;
            /**
             * Format: date-time
             * @description When it was made, RFC 3339 in UTC.
             */
            createdAt: string;
            /** @description Name of the keeper who made it. */
            keeper: string;
            /**
             * Format: uuid
             * @description Id of the keeper who made it.
             */
            keeperId: string;
            /** @description Animals in the sheet. */
            rows: number;
            /** @description What the sheet made. */
            created: components["schemas"]["CreatedCounts"];
            /** @description How many warnings there were. */
            warningCount: number;
            /** @description Set when the import was undone; null while it stands. */
            withdrawn: components["schemas"]["WithdrawnView"] | null;
            /** @description What should be looked at, by row; the first 1000. */
            warnings: components["schemas"]["ImportWarning"][];
            /** @description How much of what the sheet made still stands. */
            standing: components["schemas"]["CreatedCounts"];
            /** @description SHA-256 of the sheet, hexadecimal; null for sheets taken before it was kept, which cannot be undone. */
            sheetSha256: string | null;
        };
        KnownHere: {
            /**
             * @description Its ref on the sheet.
             * @example a3
             */
            ref: string;
            /** @description Id or registry number of its record here. */
            individual: string;
        };
        ForeignSheetRequest: {
            /** @description The text of the sheet file, every character as it was handed out. */
            file: string;
            /**
             * @description Short for the other register, put before its numbers to make codes: 1 to 8 letters and digits without accents. The initials of its name if left out.
             * @example RAC
             */
            prefix?: string;
            /** @description Animals that stand here already although they never came in by a sheet of that register: one that was given there from here, say. */
            known?: components["schemas"]["KnownHere"][];
        };
        SheetRegisterView: {
            /**
             * Format: uuid
             * @description Id among the other registers.
             */
            id: string;
            /** @description What it is called here. */
            name: string;
        };
        RecordHereView: {
            /**
             * Format: uuid
             * @description Id.
             */
            id: string;
            /**
             * @description Registry number here.
             * @example 10704-4
             */
            number: string;
            /** @description Code here. */
            code: string | null;
        };
        ForeignAnimalView: {
            /**
             * @description Its ref on the sheet.
             * @example a1
             */
            ref: string;
            /** @description Its number there; null where that register keeps it private. */
            number: string | null;
            /** @description Whether the sheet was made for it; else it is an ancestor. */
            isOnSheet: boolean;
            /** @description The code that it gets, or has, here. */
            code: string | null;
            /** @description Its record here where it was known already, or came in now. */
            here: components["schemas"]["RecordHereView"] | null;
            /** @description Whether it was known already: then its record stays as it is. */
            wasKnown: boolean;
        };
        ForeignWarningView: {
            /** @description The animal it is about, by its ref on the sheet; null for the whole sheet. */
            ref: string | null;
            /** @description What was found, in words. */
            detail: string;
        };
        ForeignSheetView: {
            /**
             * Format: uuid
             * @description Id of the import, by which all of it can be undone; null where it was only checked.
             */
            id: string | null;
            /** @description The register whose key signed it. */
            register: components["schemas"]["SheetRegisterView"];
            /**
             * @description Number of the sheet there.
             * @example PS-12-7
             */
            sheetNumber: string;
            /**
             * Format: date-time
             * @description When it was issued, RFC 3339 in UTC.
             */
            issued: string;
            /** @description What was found of its signature, in words. */
            verdict: string;
            /** @description Its animals and their ancestors, the sold ones first. */
            animals: components["schemas"]["ForeignAnimalView"][];
            /** @description What came in, or would. */
            created: components["schemas"]["CreatedCounts"];
            /** @description Claims that came in, or would, each with the sheet as a paper that waits for a review. */
            claims: number;
            /** @description What should be looked at. */
            warnings: components["schemas"]["ForeignWarningView"][];
        };
        OtherKeyView: {
            /** @description Its thumbprint (RFC 7638, SHA-256), base64url. */
            kid: string;
            /**
             * Format: date-time
             * @description Since when it signs sheets, RFC 3339.
             */
            usedFrom: string;
            /**
             * Format: date-time
             * @description Until when it did; null while it does.
             */
            usedUntil: string | null;
        };
        OtherRegisterView: {
            /**
             * Format: uuid
             * @description Id.
             */
            id: string;
            /** @description What it is called here. */
            name: string;
            /** @description Where people find it. */
            address: string | null;
            /** @description Its keys. */
            keys: components["schemas"]["OtherKeyView"][];
            /** @description The registrar who vouched for the keys. */
            keeper: string;
            /**
             * Format: date-time
             * @description When, RFC 3339 in UTC.
             */
            createdAt: string;
            /** @description Set where its sheets are believed no more. */
            withdrawn: components["schemas"]["WithdrawnView"] | null;
        };
        NewOtherRegisterRequest: {
            /** @description What it is called here. */
            name: string;
            /** @description Where people find it. The service never asks there. */
            address?: string | null;
            /** @description The keys that it publishes (a JWK set, RFC 7517), as the text of the file from its well-known address. Compare their names with somebody there by another way than the file came. */
            keys: string;
        };
        MoreKeysRequest: {
            /** @description The keys that it publishes (a JWK set, RFC 7517), as the text of the file from its well-known address. Compare their names with somebody there by another way than the file came. Those that are known stay; when one was used is taken from here. */
            keys: string;
        };
    };
    responses: never;
    parameters: never;
    requestBodies: never;
    headers: never;
    pathItems: never;
}
export type $defs = Record<string, never>;
export interface operations {
    liveHealth: {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            /** @description It runs. */
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content?: never;
            };
        };
    };
    readyHealth: {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            /** @description It can. */
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content?: never;
            };
            /** @description The database does not answer. */
            503: {
                headers: {
                    [name: string]: unknown;
                };
                content?: never;
            };
        };
    };
    listKeepersPeople: {
        parameters: {
            query?: {
                /** @description How many items at most; 50 if left out. */
                limit?: number;
                /** @description Go on after this point: the `next` of the page before. */
                after?: string;
                /** @description Also count all items that match. */
                total?: boolean;
            };
            header?: never;
            path?: never;
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            /** @description One page of the list. */
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": {
                        items: components["schemas"]["MemberView"][];
                        /** @description Send it as `after` to go on; null at the end. */
                        next: string | null;
                        /** @description How many match in all; only with `total=true`. */
                        total?: number;
                    };
                };
            };
            /** @description sign-in: only a member may do this, or the token is unknown, revoked or expired. */
            401: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description forbidden: your role or your token does not include this, or the record is another keeper’s. */
            403: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description invalid: a field cannot be taken; each is named in `errors`. */
            422: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description too-many: more was asked than is allowed in so short a time; Retry-After says in how many seconds to try again. */
            429: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
        };
    };
    getKeeperPeople: {
        parameters: {
            query?: never;
            header?: never;
            path: {
                id: string;
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["MemberView"];
                };
            };
            /** @description sign-in: only a member may do this, or the token is unknown, revoked or expired. */
            401: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description forbidden: your role or your token does not include this, or the record is another keeper’s. */
            403: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description not-found: there is no such record. */
            404: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description too-many: more was asked than is allowed in so short a time; Retry-After says in how many seconds to try again. */
            429: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
        };
    };
    changeKeeperPeople: {
        parameters: {
            query?: never;
            header: {
                /** @description ETag of the record as it was read, such as "3"; a list of them; or * for whatever is there. */
                "If-Match": string;
            };
            path: {
                id: string;
            };
            cookie?: never;
        };
        requestBody: {
            content: {
                "application/json": components["schemas"]["KeeperChangeRequest"];
            };
        };
        responses: {
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["MemberView"];
                };
            };
            /** @description malformed: the request cannot be read as JSON. */
            400: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description sign-in: only a member may do this, or the token is unknown, revoked or expired. */
            401: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description forbidden: your role or your token does not include this, or the record is another keeper’s. */
            403: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description not-found: there is no such record. */
            404: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description conflict or loop: a rule of the register stands against it as things are now; the records in the way are named. */
            409: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description stale: somebody changed the record meanwhile; `current` is the record as it is now. */
            412: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description invalid: a field cannot be taken; each is named in `errors`. */
            422: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description precondition-required: the If-Match header is missing. */
            428: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description too-many: more was asked than is allowed in so short a time; Retry-After says in how many seconds to try again. */
            429: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
        };
    };
    departKeeperPeople: {
        parameters: {
            query?: never;
            header: {
                /** @description ETag of the record as it was read, such as "3"; a list of them; or * for whatever is there. */
                "If-Match": string;
            };
            path: {
                id: string;
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            201: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["MemberView"];
                };
            };
            /** @description sign-in: only a member may do this, or the token is unknown, revoked or expired. */
            401: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description forbidden: your role or your token does not include this, or the record is another keeper’s. */
            403: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description not-found: there is no such record. */
            404: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description conflict or loop: a rule of the register stands against it as things are now; the records in the way are named. */
            409: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description stale: somebody changed the record meanwhile; `current` is the record as it is now. */
            412: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description invalid: a field cannot be taken; each is named in `errors`. */
            422: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description precondition-required: the If-Match header is missing. */
            428: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description too-many: more was asked than is allowed in so short a time; Retry-After says in how many seconds to try again. */
            429: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
        };
    };
    takeKeeperBackPeople: {
        parameters: {
            query?: never;
            header: {
                /** @description ETag of the record as it was read, such as "3"; a list of them; or * for whatever is there. */
                "If-Match": string;
            };
            path: {
                id: string;
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["MemberView"];
                };
            };
            /** @description sign-in: only a member may do this, or the token is unknown, revoked or expired. */
            401: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description forbidden: your role or your token does not include this, or the record is another keeper’s. */
            403: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description not-found: there is no such record. */
            404: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description conflict or loop: a rule of the register stands against it as things are now; the records in the way are named. */
            409: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description stale: somebody changed the record meanwhile; `current` is the record as it is now. */
            412: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description precondition-required: the If-Match header is missing. */
            428: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description too-many: more was asked than is allowed in so short a time; Retry-After says in how many seconds to try again. */
            429: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
        };
    };
    getClubPeople: {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["ClubView"];
                };
            };
            /** @description sign-in: only a member may do this, or the token is unknown, revoked or expired. */
            401: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description forbidden: your role or your token does not include this, or the record is another keeper’s. */
            403: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description not-found: there is no such record. */
            404: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description too-many: more was asked than is allowed in so short a time; Retry-After says in how many seconds to try again. */
            429: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
        };
    };
    changeClubPeople: {
        parameters: {
            query?: never;
            header: {
                /** @description ETag of the record as it was read, such as "3"; a list of them; or * for whatever is there. */
                "If-Match": string;
            };
            path?: never;
            cookie?: never;
        };
        requestBody: {
            content: {
                "application/json": components["schemas"]["ClubChangeRequest"];
            };
        };
        responses: {
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["ClubView"];
                };
            };
            /** @description malformed: the request cannot be read as JSON. */
            400: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description sign-in: only a member may do this, or the token is unknown, revoked or expired. */
            401: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description forbidden: your role or your token does not include this, or the record is another keeper’s. */
            403: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description not-found: there is no such record. */
            404: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description stale: somebody changed the record meanwhile; `current` is the record as it is now. */
            412: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description invalid: a field cannot be taken; each is named in `errors`. */
            422: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description precondition-required: the If-Match header is missing. */
            428: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description too-many: more was asked than is allowed in so short a time; Retry-After says in how many seconds to try again. */
            429: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
        };
    };
    getSessionSession: {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["SessionView"];
                };
            };
            /** @description sign-in: only a member may do this, or the token is unknown, revoked or expired. */
            401: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description forbidden: your role or your token does not include this, or the record is another keeper’s. */
            403: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description too-many: more was asked than is allowed in so short a time; Retry-After says in how many seconds to try again. */
            429: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
        };
    };
    signInSession: {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        requestBody: {
            content: {
                "application/json": components["schemas"]["SignInRequest"];
            };
        };
        responses: {
            201: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["SessionView"];
                };
            };
            /** @description malformed: the request cannot be read as JSON. */
            400: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description sign-in: only a member may do this, or the token is unknown, revoked or expired. */
            401: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description forbidden: your role or your token does not include this, or the record is another keeper’s. */
            403: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description invalid: a field cannot be taken; each is named in `errors`. */
            422: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description too-many: more was asked than is allowed in so short a time; Retry-After says in how many seconds to try again. */
            429: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
        };
    };
    signOutSession: {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["SessionView"];
                };
            };
            /** @description sign-in: only a member may do this, or the token is unknown, revoked or expired. */
            401: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description forbidden: your role or your token does not include this, or the record is another keeper’s. */
            403: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description too-many: more was asked than is allowed in so short a time; Retry-After says in how many seconds to try again. */
            429: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
        };
    };
    signInToDemoSession: {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        requestBody: {
            content: {
                "application/json": components["schemas"]["DemoSignInRequest"];
            };
        };
        responses: {
            201: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["SessionView"];
                };
            };
            /** @description malformed: the request cannot be read as JSON. */
            400: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description sign-in: only a member may do this, or the token is unknown, revoked or expired. */
            401: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description forbidden: your role or your token does not include this, or the record is another keeper’s. */
            403: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description not-found: there is no such record. */
            404: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description invalid: a field cannot be taken; each is named in `errors`. */
            422: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description too-many: more was asked than is allowed in so short a time; Retry-After says in how many seconds to try again. */
            429: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
        };
    };
    signOutEverywhereSession: {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["SessionView"];
                };
            };
            /** @description sign-in: only a member may do this, or the token is unknown, revoked or expired. */
            401: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description forbidden: your role or your token does not include this, or the record is another keeper’s. */
            403: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description too-many: more was asked than is allowed in so short a time; Retry-After says in how many seconds to try again. */
            429: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
        };
    };
    setUpSession: {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        requestBody: {
            content: {
                "application/json": components["schemas"]["SetupRequest"];
            };
        };
        responses: {
            201: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["SessionView"];
                };
            };
            /** @description malformed: the request cannot be read as JSON. */
            400: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description sign-in: only a member may do this, or the token is unknown, revoked or expired. */
            401: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description forbidden: your role or your token does not include this, or the record is another keeper’s. */
            403: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description conflict or loop: a rule of the register stands against it as things are now; the records in the way are named. */
            409: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description invalid: a field cannot be taken; each is named in `errors`. */
            422: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description too-many: more was asked than is allowed in so short a time; Retry-After says in how many seconds to try again. */
            429: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
        };
    };
    listLinksLinks: {
        parameters: {
            query?: {
                /** @description How many items at most; 50 if left out. */
                limit?: number;
                /** @description Go on after this point: the `next` of the page before. */
                after?: string;
                /** @description Also count all items that match. */
                total?: boolean;
            };
            header?: never;
            path?: never;
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            /** @description One page of the list. */
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": {
                        items: components["schemas"]["LinkView"][];
                        /** @description Send it as `after` to go on; null at the end. */
                        next: string | null;
                        /** @description How many match in all; only with `total=true`. */
                        total?: number;
                    };
                };
            };
            /** @description sign-in: only a member may do this, or the token is unknown, revoked or expired. */
            401: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description forbidden: your role or your token does not include this, or the record is another keeper’s. */
            403: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description invalid: a field cannot be taken; each is named in `errors`. */
            422: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description too-many: more was asked than is allowed in so short a time; Retry-After says in how many seconds to try again. */
            429: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
        };
    };
    makeLinkLinks: {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        requestBody: {
            content: {
                "application/json": components["schemas"]["NewLinkRequest"];
            };
        };
        responses: {
            201: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["NewLinkView"];
                };
            };
            /** @description malformed: the request cannot be read as JSON. */
            400: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description sign-in: only a member may do this, or the token is unknown, revoked or expired. */
            401: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description forbidden: your role or your token does not include this, or the record is another keeper’s. */
            403: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description conflict or loop: a rule of the register stands against it as things are now; the records in the way are named. */
            409: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description invalid: a field cannot be taken; each is named in `errors`. */
            422: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description too-many: more was asked than is allowed in so short a time; Retry-After says in how many seconds to try again. */
            429: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
        };
    };
    lookAtLinkLinks: {
        parameters: {
            query?: never;
            header?: never;
            path: {
                /** @description The secret at the end of the link. */
                link: string;
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["LinkOfferView"];
                };
            };
            /** @description sign-in: only a member may do this, or the token is unknown, revoked or expired. */
            401: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description forbidden: your role or your token does not include this, or the record is another keeper’s. */
            403: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description not-found: there is no such record. */
            404: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description too-many: more was asked than is allowed in so short a time; Retry-After says in how many seconds to try again. */
            429: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
        };
    };
    revokeLinkLinks: {
        parameters: {
            query?: never;
            header?: never;
            path: {
                /** @description Id of the link. */
                link: string;
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["LinkView"];
                };
            };
            /** @description sign-in: only a member may do this, or the token is unknown, revoked or expired. */
            401: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description forbidden: your role or your token does not include this, or the record is another keeper’s. */
            403: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description not-found: there is no such record. */
            404: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description too-many: more was asked than is allowed in so short a time; Retry-After says in how many seconds to try again. */
            429: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
        };
    };
    useLinkLinks: {
        parameters: {
            query?: never;
            header?: never;
            path: {
                /** @description The secret at the end of the link. */
                link: string;
            };
            cookie?: never;
        };
        requestBody: {
            content: {
                "application/json": components["schemas"]["LinkUseRequest"];
            };
        };
        responses: {
            201: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["SessionView"];
                };
            };
            /** @description malformed: the request cannot be read as JSON. */
            400: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description sign-in: only a member may do this, or the token is unknown, revoked or expired. */
            401: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description forbidden: your role or your token does not include this, or the record is another keeper’s. */
            403: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description not-found: there is no such record. */
            404: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description conflict or loop: a rule of the register stands against it as things are now; the records in the way are named. */
            409: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description invalid: a field cannot be taken; each is named in `errors`. */
            422: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description too-many: more was asked than is allowed in so short a time; Retry-After says in how many seconds to try again. */
            429: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
        };
    };
    changePassphraseAccount: {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        requestBody: {
            content: {
                "application/json": components["schemas"]["PassphraseChangeRequest"];
            };
        };
        responses: {
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["SessionView"];
                };
            };
            /** @description malformed: the request cannot be read as JSON. */
            400: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description sign-in: only a member may do this, or the token is unknown, revoked or expired. */
            401: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description forbidden: your role or your token does not include this, or the record is another keeper’s. */
            403: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description conflict or loop: a rule of the register stands against it as things are now; the records in the way are named. */
            409: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description invalid: a field cannot be taken; each is named in `errors`. */
            422: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description too-many: more was asked than is allowed in so short a time; Retry-After says in how many seconds to try again. */
            429: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
        };
    };
    listTokensAccount: {
        parameters: {
            query?: {
                /** @description How many items at most; 50 if left out. */
                limit?: number;
                /** @description Go on after this point: the `next` of the page before. */
                after?: string;
                /** @description Also count all items that match. */
                total?: boolean;
            };
            header?: never;
            path?: never;
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            /** @description One page of the list. */
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": {
                        items: components["schemas"]["TokenView"][];
                        /** @description Send it as `after` to go on; null at the end. */
                        next: string | null;
                        /** @description How many match in all; only with `total=true`. */
                        total?: number;
                    };
                };
            };
            /** @description sign-in: only a member may do this, or the token is unknown, revoked or expired. */
            401: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description forbidden: your role or your token does not include this, or the record is another keeper’s. */
            403: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description invalid: a field cannot be taken; each is named in `errors`. */
            422: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description too-many: more was asked than is allowed in so short a time; Retry-After says in how many seconds to try again. */
            429: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
        };
    };
    makeTokenAccount: {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        requestBody: {
            content: {
                "application/json": components["schemas"]["NewTokenRequest"];
            };
        };
        responses: {
            201: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["NewTokenView"];
                };
            };
            /** @description malformed: the request cannot be read as JSON. */
            400: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description sign-in: only a member may do this, or the token is unknown, revoked or expired. */
            401: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description forbidden: your role or your token does not include this, or the record is another keeper’s. */
            403: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description conflict or loop: a rule of the register stands against it as things are now; the records in the way are named. */
            409: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description invalid: a field cannot be taken; each is named in `errors`. */
            422: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description too-many: more was asked than is allowed in so short a time; Retry-After says in how many seconds to try again. */
            429: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
        };
    };
    revokeTokenAccount: {
        parameters: {
            query?: never;
            header?: never;
            path: {
                id: string;
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["TokenView"];
                };
            };
            /** @description sign-in: only a member may do this, or the token is unknown, revoked or expired. */
            401: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description forbidden: your role or your token does not include this, or the record is another keeper’s. */
            403: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description not-found: there is no such record. */
            404: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description too-many: more was asked than is allowed in so short a time; Retry-After says in how many seconds to try again. */
            429: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
        };
    };
    figuresMetrics: {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            /** @description sign-in: only a member may do this, or the token is unknown, revoked or expired. */
            401: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description forbidden: your role or your token does not include this, or the record is another keeper’s. */
            403: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description too-many: more was asked than is allowed in so short a time; Retry-After says in how many seconds to try again. */
            429: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
        };
    };
    listJournalJournal: {
        parameters: {
            query?: {
                /** @description How many items at most; 50 if left out. */
                limit?: number;
                /** @description Go on after this point: the `next` of the page before. */
                after?: string;
                /** @description Also count all items that match. */
                total?: boolean;
                /** @description The history of one record. */
                record?: string;
                /** @description Entries about records of one kind. */
                kind?: string;
                /** @description What one keeper did. */
                keeper?: string;
                /** @description Entries of one kind of change. */
                action?: "added" | "changed" | "withdrawn" | "restored" | "raised" | "raising-undone" | "raising-restored" | "imported" | "import-undone" | "import-restored" | "reviewed" | "changed-together" | "together-undone" | "together-restored" | "merged" | "unmerged" | "confirmed" | "unconfirmed" | "offered" | "offer-withdrawn" | "declined" | "accepted" | "acceptance-undone" | "departed" | "departure-withdrawn" | "came-back" | "return-undone" | "paired" | "pairing-undone" | "pairing-restored" | "joined" | "roles-changed" | "left" | "returned" | "password-changed" | "password-reset" | "signed-out-everywhere" | "token-made" | "token-revoked" | "link-made" | "link-revoked" | "revoked" | "key-made" | "key-retired" | "club-changed" | "set-up" | "seeded";
                /** @description From this day on (UTC). */
                from?: string;
                /** @description Up to this day, itself included (UTC). */
                to?: string;
            };
            header?: never;
            path?: never;
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            /** @description One page of the list. */
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": {
                        items: components["schemas"]["JournalEntryView"][];
                        /** @description Send it as `after` to go on; null at the end. */
                        next: string | null;
                        /** @description How many match in all; only with `total=true`. */
                        total?: number;
                    };
                };
            };
            /** @description sign-in: only a member may do this, or the token is unknown, revoked or expired. */
            401: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description forbidden: your role or your token does not include this, or the record is another keeper’s. */
            403: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description invalid: a field cannot be taken; each is named in `errors`. */
            422: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description too-many: more was asked than is allowed in so short a time; Retry-After says in how many seconds to try again. */
            429: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
        };
    };
    getJournalHeadJournal: {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["JournalHeadView"];
                };
            };
            /** @description sign-in: only a member may do this, or the token is unknown, revoked or expired. */
            401: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description forbidden: your role or your token does not include this, or the record is another keeper’s. */
            403: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description too-many: more was asked than is allowed in so short a time; Retry-After says in how many seconds to try again. */
            429: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
        };
    };
    getJournalEntryJournal: {
        parameters: {
            query?: never;
            header?: never;
            path: {
                id: string;
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["JournalEntryView"];
                };
            };
            /** @description sign-in: only a member may do this, or the token is unknown, revoked or expired. */
            401: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description forbidden: your role or your token does not include this, or the record is another keeper’s. */
            403: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description not-found: there is no such record. */
            404: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description too-many: more was asked than is allowed in so short a time; Retry-After says in how many seconds to try again. */
            429: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
        };
    };
    reverseJournalEntryJournal: {
        parameters: {
            query?: never;
            header?: never;
            path: {
                id: string;
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            /** @description The entry that undid the change. */
            201: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["JournalEntryView"];
                };
            };
            /** @description sign-in: only a member may do this, or the token is unknown, revoked or expired. */
            401: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description forbidden: your role or your token does not include this, or the record is another keeper’s. */
            403: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description not-found: there is no such record. */
            404: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description conflict or loop: a rule of the register stands against it as things are now; the records in the way are named. */
            409: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description invalid: a field cannot be taken; each is named in `errors`. */
            422: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description too-many: more was asked than is allowed in so short a time; Retry-After says in how many seconds to try again. */
            429: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
        };
    };
    listSpeciesSpecies: {
        parameters: {
            query?: {
                /** @description How many items at most; 50 if left out. */
                limit?: number;
                /** @description Go on after this point: the `next` of the page before. */
                after?: string;
                /** @description Also count all items that match. */
                total?: boolean;
                /** @description Part of the scientific or common name. */
                q?: string;
            };
            header?: never;
            path?: never;
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            /** @description One page of the list. */
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": {
                        items: components["schemas"]["SpeciesView"][];
                        /** @description Send it as `after` to go on; null at the end. */
                        next: string | null;
                        /** @description How many match in all; only with `total=true`. */
                        total?: number;
                    };
                };
            };
            /** @description sign-in: only a member may do this, or the token is unknown, revoked or expired. */
            401: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description forbidden: your role or your token does not include this, or the record is another keeper’s. */
            403: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description invalid: a field cannot be taken; each is named in `errors`. */
            422: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description too-many: more was asked than is allowed in so short a time; Retry-After says in how many seconds to try again. */
            429: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
        };
    };
    addSpeciesSpecies: {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        requestBody: {
            content: {
                "application/json": components["schemas"]["NewSpeciesRequest"];
            };
        };
        responses: {
            201: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["SpeciesView"];
                };
            };
            /** @description malformed: the request cannot be read as JSON. */
            400: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description sign-in: only a member may do this, or the token is unknown, revoked or expired. */
            401: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description forbidden: your role or your token does not include this, or the record is another keeper’s. */
            403: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description conflict or loop: a rule of the register stands against it as things are now; the records in the way are named. */
            409: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description invalid: a field cannot be taken; each is named in `errors`. */
            422: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description too-many: more was asked than is allowed in so short a time; Retry-After says in how many seconds to try again. */
            429: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
        };
    };
    getSpeciesSpecies: {
        parameters: {
            query?: never;
            header?: never;
            path: {
                id: string;
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["SpeciesView"];
                };
            };
            /** @description sign-in: only a member may do this, or the token is unknown, revoked or expired. */
            401: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description forbidden: your role or your token does not include this, or the record is another keeper’s. */
            403: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description not-found: there is no such record. */
            404: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description too-many: more was asked than is allowed in so short a time; Retry-After says in how many seconds to try again. */
            429: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
        };
    };
    changeSpeciesSpecies: {
        parameters: {
            query?: never;
            header: {
                /** @description ETag of the record as it was read, such as "3"; a list of them; or * for whatever is there. */
                "If-Match": string;
            };
            path: {
                id: string;
            };
            cookie?: never;
        };
        requestBody: {
            content: {
                "application/json": components["schemas"]["SpeciesChangeRequest"];
            };
        };
        responses: {
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["SpeciesView"];
                };
            };
            /** @description malformed: the request cannot be read as JSON. */
            400: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description sign-in: only a member may do this, or the token is unknown, revoked or expired. */
            401: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description forbidden: your role or your token does not include this, or the record is another keeper’s. */
            403: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description not-found: there is no such record. */
            404: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description conflict or loop: a rule of the register stands against it as things are now; the records in the way are named. */
            409: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description stale: somebody changed the record meanwhile; `current` is the record as it is now. */
            412: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description invalid: a field cannot be taken; each is named in `errors`. */
            422: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description precondition-required: the If-Match header is missing. */
            428: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description too-many: more was asked than is allowed in so short a time; Retry-After says in how many seconds to try again. */
            429: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
        };
    };
    withdrawSpeciesSpecies: {
        parameters: {
            query?: never;
            header: {
                /** @description ETag of the record as it was read, such as "3"; a list of them; or * for whatever is there. */
                "If-Match": string;
            };
            path: {
                id: string;
            };
            cookie?: never;
        };
        requestBody: {
            content: {
                "application/json": components["schemas"]["WithdrawalRequest"];
            };
        };
        responses: {
            201: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["SpeciesView"];
                };
            };
            /** @description malformed: the request cannot be read as JSON. */
            400: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description sign-in: only a member may do this, or the token is unknown, revoked or expired. */
            401: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description forbidden: your role or your token does not include this, or the record is another keeper’s. */
            403: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description not-found: there is no such record. */
            404: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description conflict or loop: a rule of the register stands against it as things are now; the records in the way are named. */
            409: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description stale: somebody changed the record meanwhile; `current` is the record as it is now. */
            412: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description invalid: a field cannot be taken; each is named in `errors`. */
            422: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description precondition-required: the If-Match header is missing. */
            428: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description too-many: more was asked than is allowed in so short a time; Retry-After says in how many seconds to try again. */
            429: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
        };
    };
    restoreSpeciesSpecies: {
        parameters: {
            query?: never;
            header: {
                /** @description ETag of the record as it was read, such as "3"; a list of them; or * for whatever is there. */
                "If-Match": string;
            };
            path: {
                id: string;
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["SpeciesView"];
                };
            };
            /** @description sign-in: only a member may do this, or the token is unknown, revoked or expired. */
            401: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description forbidden: your role or your token does not include this, or the record is another keeper’s. */
            403: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description not-found: there is no such record. */
            404: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description conflict or loop: a rule of the register stands against it as things are now; the records in the way are named. */
            409: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description stale: somebody changed the record meanwhile; `current` is the record as it is now. */
            412: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description precondition-required: the If-Match header is missing. */
            428: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description too-many: more was asked than is allowed in so short a time; Retry-After says in how many seconds to try again. */
            429: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
        };
    };
    listLinesLines: {
        parameters: {
            query?: {
                /** @description How many items at most; 50 if left out. */
                limit?: number;
                /** @description Go on after this point: the `next` of the page before. */
                after?: string;
                /** @description Also count all items that match. */
                total?: boolean;
                /** @description Lines of this species only. */
                speciesId?: string;
                /** @description Part of the name. */
                q?: string;
            };
            header?: never;
            path?: never;
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            /** @description One page of the list. */
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": {
                        items: components["schemas"]["LineView"][];
                        /** @description Send it as `after` to go on; null at the end. */
                        next: string | null;
                        /** @description How many match in all; only with `total=true`. */
                        total?: number;
                    };
                };
            };
            /** @description sign-in: only a member may do this, or the token is unknown, revoked or expired. */
            401: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description forbidden: your role or your token does not include this, or the record is another keeper’s. */
            403: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description invalid: a field cannot be taken; each is named in `errors`. */
            422: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description too-many: more was asked than is allowed in so short a time; Retry-After says in how many seconds to try again. */
            429: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
        };
    };
    addLineLines: {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        requestBody: {
            content: {
                "application/json": components["schemas"]["NewLineRequest"];
            };
        };
        responses: {
            201: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["LineView"];
                };
            };
            /** @description malformed: the request cannot be read as JSON. */
            400: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description sign-in: only a member may do this, or the token is unknown, revoked or expired. */
            401: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description forbidden: your role or your token does not include this, or the record is another keeper’s. */
            403: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description conflict or loop: a rule of the register stands against it as things are now; the records in the way are named. */
            409: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description invalid: a field cannot be taken; each is named in `errors`. */
            422: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description too-many: more was asked than is allowed in so short a time; Retry-After says in how many seconds to try again. */
            429: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
        };
    };
    getLineLines: {
        parameters: {
            query?: never;
            header?: never;
            path: {
                id: string;
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["LineView"];
                };
            };
            /** @description sign-in: only a member may do this, or the token is unknown, revoked or expired. */
            401: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description forbidden: your role or your token does not include this, or the record is another keeper’s. */
            403: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description not-found: there is no such record. */
            404: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description too-many: more was asked than is allowed in so short a time; Retry-After says in how many seconds to try again. */
            429: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
        };
    };
    changeLineLines: {
        parameters: {
            query?: never;
            header: {
                /** @description ETag of the record as it was read, such as "3"; a list of them; or * for whatever is there. */
                "If-Match": string;
            };
            path: {
                id: string;
            };
            cookie?: never;
        };
        requestBody: {
            content: {
                "application/json": components["schemas"]["LineChangeRequest"];
            };
        };
        responses: {
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["LineView"];
                };
            };
            /** @description malformed: the request cannot be read as JSON. */
            400: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description sign-in: only a member may do this, or the token is unknown, revoked or expired. */
            401: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description forbidden: your role or your token does not include this, or the record is another keeper’s. */
            403: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description not-found: there is no such record. */
            404: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description conflict or loop: a rule of the register stands against it as things are now; the records in the way are named. */
            409: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description stale: somebody changed the record meanwhile; `current` is the record as it is now. */
            412: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description invalid: a field cannot be taken; each is named in `errors`. */
            422: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description precondition-required: the If-Match header is missing. */
            428: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description too-many: more was asked than is allowed in so short a time; Retry-After says in how many seconds to try again. */
            429: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
        };
    };
    withdrawLineLines: {
        parameters: {
            query?: never;
            header: {
                /** @description ETag of the record as it was read, such as "3"; a list of them; or * for whatever is there. */
                "If-Match": string;
            };
            path: {
                id: string;
            };
            cookie?: never;
        };
        requestBody: {
            content: {
                "application/json": components["schemas"]["WithdrawalRequest"];
            };
        };
        responses: {
            201: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["LineView"];
                };
            };
            /** @description malformed: the request cannot be read as JSON. */
            400: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description sign-in: only a member may do this, or the token is unknown, revoked or expired. */
            401: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description forbidden: your role or your token does not include this, or the record is another keeper’s. */
            403: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description not-found: there is no such record. */
            404: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description conflict or loop: a rule of the register stands against it as things are now; the records in the way are named. */
            409: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description stale: somebody changed the record meanwhile; `current` is the record as it is now. */
            412: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description invalid: a field cannot be taken; each is named in `errors`. */
            422: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description precondition-required: the If-Match header is missing. */
            428: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description too-many: more was asked than is allowed in so short a time; Retry-After says in how many seconds to try again. */
            429: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
        };
    };
    restoreLineLines: {
        parameters: {
            query?: never;
            header: {
                /** @description ETag of the record as it was read, such as "3"; a list of them; or * for whatever is there. */
                "If-Match": string;
            };
            path: {
                id: string;
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["LineView"];
                };
            };
            /** @description sign-in: only a member may do this, or the token is unknown, revoked or expired. */
            401: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description forbidden: your role or your token does not include this, or the record is another keeper’s. */
            403: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description not-found: there is no such record. */
            404: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description conflict or loop: a rule of the register stands against it as things are now; the records in the way are named. */
            409: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description stale: somebody changed the record meanwhile; `current` is the record as it is now. */
            412: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description precondition-required: the If-Match header is missing. */
            428: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description too-many: more was asked than is allowed in so short a time; Retry-After says in how many seconds to try again. */
            429: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
        };
    };
    listSourcesSources: {
        parameters: {
            query?: {
                /** @description How many items at most; 50 if left out. */
                limit?: number;
                /** @description Go on after this point: the `next` of the page before. */
                after?: string;
                /** @description Also count all items that match. */
                total?: boolean;
                /** @description Kind of source. */
                kind?: "import" | "wild-collection" | "purchase" | "unknown";
                /** @description Sources that this keeper entered. */
                keeperId?: string;
                /** @description Visibility. */
                visibility?: "private" | "club" | "public";
                /** @description Part of the code, of the label or of a name. */
                q?: string;
            };
            header?: never;
            path?: never;
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            /** @description One page of the list. */
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": {
                        items: components["schemas"]["SourceView"][];
                        /** @description Send it as `after` to go on; null at the end. */
                        next: string | null;
                        /** @description How many match in all; only with `total=true`. */
                        total?: number;
                    };
                };
            };
            /** @description sign-in: only a member may do this, or the token is unknown, revoked or expired. */
            401: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description forbidden: your role or your token does not include this, or the record is another keeper’s. */
            403: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description invalid: a field cannot be taken; each is named in `errors`. */
            422: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description too-many: more was asked than is allowed in so short a time; Retry-After says in how many seconds to try again. */
            429: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
        };
    };
    addSourceSources: {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        requestBody: {
            content: {
                "application/json": components["schemas"]["NewSourceRequest"];
            };
        };
        responses: {
            201: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["SourceView"];
                };
            };
            /** @description malformed: the request cannot be read as JSON. */
            400: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description sign-in: only a member may do this, or the token is unknown, revoked or expired. */
            401: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description forbidden: your role or your token does not include this, or the record is another keeper’s. */
            403: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description conflict or loop: a rule of the register stands against it as things are now; the records in the way are named. */
            409: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description invalid: a field cannot be taken; each is named in `errors`. */
            422: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description too-many: more was asked than is allowed in so short a time; Retry-After says in how many seconds to try again. */
            429: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
        };
    };
    getSourceSources: {
        parameters: {
            query?: never;
            header?: never;
            path: {
                id: string;
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["SourceView"];
                };
            };
            /** @description sign-in: only a member may do this, or the token is unknown, revoked or expired. */
            401: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description forbidden: your role or your token does not include this, or the record is another keeper’s. */
            403: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description not-found: there is no such record. */
            404: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description too-many: more was asked than is allowed in so short a time; Retry-After says in how many seconds to try again. */
            429: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
        };
    };
    changeSourceSources: {
        parameters: {
            query?: never;
            header: {
                /** @description ETag of the record as it was read, such as "3"; a list of them; or * for whatever is there. */
                "If-Match": string;
            };
            path: {
                id: string;
            };
            cookie?: never;
        };
        requestBody: {
            content: {
                "application/json": components["schemas"]["SourceChangeRequest"];
            };
        };
        responses: {
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["SourceView"];
                };
            };
            /** @description malformed: the request cannot be read as JSON. */
            400: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description sign-in: only a member may do this, or the token is unknown, revoked or expired. */
            401: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description forbidden: your role or your token does not include this, or the record is another keeper’s. */
            403: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description not-found: there is no such record. */
            404: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description conflict or loop: a rule of the register stands against it as things are now; the records in the way are named. */
            409: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description stale: somebody changed the record meanwhile; `current` is the record as it is now. */
            412: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description invalid: a field cannot be taken; each is named in `errors`. */
            422: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description precondition-required: the If-Match header is missing. */
            428: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description too-many: more was asked than is allowed in so short a time; Retry-After says in how many seconds to try again. */
            429: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
        };
    };
    withdrawSourceSources: {
        parameters: {
            query?: never;
            header: {
                /** @description ETag of the record as it was read, such as "3"; a list of them; or * for whatever is there. */
                "If-Match": string;
            };
            path: {
                id: string;
            };
            cookie?: never;
        };
        requestBody: {
            content: {
                "application/json": components["schemas"]["WithdrawalRequest"];
            };
        };
        responses: {
            201: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["SourceView"];
                };
            };
            /** @description malformed: the request cannot be read as JSON. */
            400: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description sign-in: only a member may do this, or the token is unknown, revoked or expired. */
            401: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description forbidden: your role or your token does not include this, or the record is another keeper’s. */
            403: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description not-found: there is no such record. */
            404: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description conflict or loop: a rule of the register stands against it as things are now; the records in the way are named. */
            409: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description stale: somebody changed the record meanwhile; `current` is the record as it is now. */
            412: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description invalid: a field cannot be taken; each is named in `errors`. */
            422: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description precondition-required: the If-Match header is missing. */
            428: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description too-many: more was asked than is allowed in so short a time; Retry-After says in how many seconds to try again. */
            429: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
        };
    };
    restoreSourceSources: {
        parameters: {
            query?: never;
            header: {
                /** @description ETag of the record as it was read, such as "3"; a list of them; or * for whatever is there. */
                "If-Match": string;
            };
            path: {
                id: string;
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["SourceView"];
                };
            };
            /** @description sign-in: only a member may do this, or the token is unknown, revoked or expired. */
            401: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description forbidden: your role or your token does not include this, or the record is another keeper’s. */
            403: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description not-found: there is no such record. */
            404: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description conflict or loop: a rule of the register stands against it as things are now; the records in the way are named. */
            409: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description stale: somebody changed the record meanwhile; `current` is the record as it is now. */
            412: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description precondition-required: the If-Match header is missing. */
            428: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description too-many: more was asked than is allowed in so short a time; Retry-After says in how many seconds to try again. */
            429: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
        };
    };
    changeTogetherTogether: {
        parameters: {
            query?: {
                /** @description Only tell what would change, and what stands against it; write nothing. */
                dryRun?: boolean;
            };
            header?: never;
            path?: never;
            cookie?: never;
        };
        requestBody: {
            content: {
                "application/json": components["schemas"]["ChangeTogetherRequest"];
            };
        };
        responses: {
            /** @description It was only looked at; nothing was written. */
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["ChangedTogetherView"];
                };
            };
            /** @description They were changed. */
            201: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["ChangedTogetherView"];
                };
            };
            /** @description malformed: the request cannot be read as JSON. */
            400: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description sign-in: only a member may do this, or the token is unknown, revoked or expired. */
            401: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description forbidden: your role or your token does not include this, or the record is another keeper’s. */
            403: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description not-found: there is no such record. */
            404: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description conflict or loop: a rule of the register stands against it as things are now; the records in the way are named. */
            409: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description invalid: a field cannot be taken; each is named in `errors`. */
            422: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description too-many: more was asked than is allowed in so short a time; Retry-After says in how many seconds to try again. */
            429: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
        };
    };
    listIndividualsIndividuals: {
        parameters: {
            query?: {
                /** @description How many items at most; 50 if left out. */
                limit?: number;
                /** @description Go on after this point: the `next` of the page before. */
                after?: string;
                /** @description Also count all items that match. */
                total?: boolean;
                /** @description Exactly this code; case does not matter. */
                code?: string;
                /** @description Exactly this registry number. */
                number?: string;
                /** @description Line: its id or its whole name. */
                line?: string;
                /** @description Line: its id. */
                lineId?: string;
                /** @description Species: its id, scientific or common name. */
                species?: string;
                /** @description Keeper: id or whole name. */
                keeper?: string;
                /** @description Animals from this source. */
                sourceId?: string;
                /** @description Sex. */
                sex?: "male" | "female" | "unsexed";
                /** @description Status. */
                status?: "alive" | "died" | "gone" | "unknown";
                /** @description Visibility. */
                visibility?: "private" | "club" | "public";
                /** @description Words, each of which begins the number or stands in the code, line, species or keeper; one or two characters in the code only where it or a part of it begins. */
                q?: string;
                /** @description Hatched, or perhaps hatched, in this year or later. */
                hatchedFrom?: number;
                /** @description Hatched, or perhaps hatched, in this year or before. */
                hatchedTo?: number;
                /** @description Inbreeding coefficient at least this, 0 to 1. */
                inbreedingFrom?: number;
                /** @description Inbreeding coefficient at most this, 0 to 1. */
                inbreedingTo?: number;
                /** @description Pedigree depth at least this many generations. */
                depthFrom?: number;
                /** @description Pedigree depth at most this many generations. */
                depthTo?: number;
                /** @description Mean kinship with the living animals of its line at least this, 0 to 1. */
                meanKinshipFrom?: number;
                /** @description Mean kinship with the living animals of its line at most this, 0 to 1. */
                meanKinshipTo?: number;
                /** @description Share of the genome traced to founders with papers at least this, 0 to 1. */
                tracedShareFrom?: number;
                /** @description Share of the genome traced to founders with papers at most this, 0 to 1. */
                tracedShareTo?: number;
                /** @description Order; number if left out. Animals without the value come last. Figures (inbreeding, depth, meanKinship, tracedShare) are those last written: they follow a change at once or, where it moves many, a moment later; GET /lineage/progress tells. Where they move between two pages, an animal that moves may be met twice or not at all; all others are met once. */
                sort?: "number" | "code" | "line" | "hatched" | "species" | "keeper" | "inbreeding" | "depth" | "meanKinship" | "tracedShare";
                /** @description Direction; asc if left out. */
                order?: "asc" | "desc";
            };
            header?: never;
            path?: never;
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            /** @description One page of the list. */
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": {
                        items: components["schemas"]["IndividualItemView"][];
                        /** @description Send it as `after` to go on; null at the end. */
                        next: string | null;
                        /** @description How many match in all; only with `total=true`. */
                        total?: number;
                    };
                };
            };
            /** @description sign-in: only a member may do this, or the token is unknown, revoked or expired. */
            401: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description forbidden: your role or your token does not include this, or the record is another keeper’s. */
            403: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description invalid: a field cannot be taken; each is named in `errors`. */
            422: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description too-many: more was asked than is allowed in so short a time; Retry-After says in how many seconds to try again. */
            429: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
        };
    };
    addIndividualIndividuals: {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        requestBody: {
            content: {
                "application/json": components["schemas"]["NewIndividualRequest"];
            };
        };
        responses: {
            201: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["IndividualView"];
                };
            };
            /** @description malformed: the request cannot be read as JSON. */
            400: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description sign-in: only a member may do this, or the token is unknown, revoked or expired. */
            401: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description forbidden: your role or your token does not include this, or the record is another keeper’s. */
            403: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description conflict or loop: a rule of the register stands against it as things are now; the records in the way are named. */
            409: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description invalid: a field cannot be taken; each is named in `errors`. */
            422: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description too-many: more was asked than is allowed in so short a time; Retry-After says in how many seconds to try again. */
            429: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
        };
    };
    getIndividualIndividuals: {
        parameters: {
            query?: never;
            header?: never;
            path: {
                id: string;
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["IndividualView"];
                };
            };
            /** @description sign-in: only a member may do this, or the token is unknown, revoked or expired. */
            401: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description forbidden: your role or your token does not include this, or the record is another keeper’s. */
            403: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description not-found: there is no such record. */
            404: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description too-many: more was asked than is allowed in so short a time; Retry-After says in how many seconds to try again. */
            429: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
        };
    };
    changeIndividualIndividuals: {
        parameters: {
            query?: never;
            header: {
                /** @description ETag of the record as it was read, such as "3"; a list of them; or * for whatever is there. */
                "If-Match": string;
            };
            path: {
                id: string;
            };
            cookie?: never;
        };
        requestBody: {
            content: {
                "application/json": components["schemas"]["IndividualChangeRequest"];
            };
        };
        responses: {
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["IndividualView"];
                };
            };
            /** @description malformed: the request cannot be read as JSON. */
            400: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description sign-in: only a member may do this, or the token is unknown, revoked or expired. */
            401: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description forbidden: your role or your token does not include this, or the record is another keeper’s. */
            403: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description not-found: there is no such record. */
            404: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description conflict or loop: a rule of the register stands against it as things are now; the records in the way are named. */
            409: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description stale: somebody changed the record meanwhile; `current` is the record as it is now. */
            412: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description invalid: a field cannot be taken; each is named in `errors`. */
            422: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description precondition-required: the If-Match header is missing. */
            428: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description too-many: more was asked than is allowed in so short a time; Retry-After says in how many seconds to try again. */
            429: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
        };
    };
    withdrawIndividualIndividuals: {
        parameters: {
            query?: never;
            header: {
                /** @description ETag of the record as it was read, such as "3"; a list of them; or * for whatever is there. */
                "If-Match": string;
            };
            path: {
                id: string;
            };
            cookie?: never;
        };
        requestBody: {
            content: {
                "application/json": components["schemas"]["WithdrawalRequest"];
            };
        };
        responses: {
            201: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["IndividualView"];
                };
            };
            /** @description malformed: the request cannot be read as JSON. */
            400: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description sign-in: only a member may do this, or the token is unknown, revoked or expired. */
            401: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description forbidden: your role or your token does not include this, or the record is another keeper’s. */
            403: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description not-found: there is no such record. */
            404: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description conflict or loop: a rule of the register stands against it as things are now; the records in the way are named. */
            409: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description stale: somebody changed the record meanwhile; `current` is the record as it is now. */
            412: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description invalid: a field cannot be taken; each is named in `errors`. */
            422: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description precondition-required: the If-Match header is missing. */
            428: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description too-many: more was asked than is allowed in so short a time; Retry-After says in how many seconds to try again. */
            429: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
        };
    };
    restoreIndividualIndividuals: {
        parameters: {
            query?: never;
            header: {
                /** @description ETag of the record as it was read, such as "3"; a list of them; or * for whatever is there. */
                "If-Match": string;
            };
            path: {
                id: string;
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["IndividualView"];
                };
            };
            /** @description sign-in: only a member may do this, or the token is unknown, revoked or expired. */
            401: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description forbidden: your role or your token does not include this, or the record is another keeper’s. */
            403: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description not-found: there is no such record. */
            404: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description conflict or loop: a rule of the register stands against it as things are now; the records in the way are named. */
            409: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description stale: somebody changed the record meanwhile; `current` is the record as it is now. */
            412: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description precondition-required: the If-Match header is missing. */
            428: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description too-many: more was asked than is allowed in so short a time; Retry-After says in how many seconds to try again. */
            429: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
        };
    };
    listPairingsPairings: {
        parameters: {
            query?: {
                /** @description How many items at most; 50 if left out. */
                limit?: number;
                /** @description Go on after this point: the `next` of the page before. */
                after?: string;
                /** @description Also count all items that match. */
                total?: boolean;
                /** @description Pairings of this keeper. */
                keeperId?: string;
                /** @description Pairings in which this animal lives or lived. */
                individualId?: string;
                /** @description Part of the name. */
                q?: string;
            };
            header?: never;
            path?: never;
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            /** @description One page of the list. */
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": {
                        items: components["schemas"]["PairingView"][];
                        /** @description Send it as `after` to go on; null at the end. */
                        next: string | null;
                        /** @description How many match in all; only with `total=true`. */
                        total?: number;
                    };
                };
            };
            /** @description sign-in: only a member may do this, or the token is unknown, revoked or expired. */
            401: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description forbidden: your role or your token does not include this, or the record is another keeper’s. */
            403: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description invalid: a field cannot be taken; each is named in `errors`. */
            422: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description too-many: more was asked than is allowed in so short a time; Retry-After says in how many seconds to try again. */
            429: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
        };
    };
    addPairingPairings: {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        requestBody: {
            content: {
                "application/json": components["schemas"]["NewPairingRequest"];
            };
        };
        responses: {
            201: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["PairingView"];
                };
            };
            /** @description malformed: the request cannot be read as JSON. */
            400: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description sign-in: only a member may do this, or the token is unknown, revoked or expired. */
            401: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description forbidden: your role or your token does not include this, or the record is another keeper’s. */
            403: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description conflict or loop: a rule of the register stands against it as things are now; the records in the way are named. */
            409: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description invalid: a field cannot be taken; each is named in `errors`. */
            422: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description too-many: more was asked than is allowed in so short a time; Retry-After says in how many seconds to try again. */
            429: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
        };
    };
    getPairingPairings: {
        parameters: {
            query?: never;
            header?: never;
            path: {
                id: string;
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["PairingView"];
                };
            };
            /** @description sign-in: only a member may do this, or the token is unknown, revoked or expired. */
            401: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description forbidden: your role or your token does not include this, or the record is another keeper’s. */
            403: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description not-found: there is no such record. */
            404: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description too-many: more was asked than is allowed in so short a time; Retry-After says in how many seconds to try again. */
            429: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
        };
    };
    changePairingPairings: {
        parameters: {
            query?: never;
            header: {
                /** @description ETag of the record as it was read, such as "3"; a list of them; or * for whatever is there. */
                "If-Match": string;
            };
            path: {
                id: string;
            };
            cookie?: never;
        };
        requestBody: {
            content: {
                "application/json": components["schemas"]["PairingChangeRequest"];
            };
        };
        responses: {
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["PairingView"];
                };
            };
            /** @description malformed: the request cannot be read as JSON. */
            400: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description sign-in: only a member may do this, or the token is unknown, revoked or expired. */
            401: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description forbidden: your role or your token does not include this, or the record is another keeper’s. */
            403: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description not-found: there is no such record. */
            404: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description conflict or loop: a rule of the register stands against it as things are now; the records in the way are named. */
            409: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description stale: somebody changed the record meanwhile; `current` is the record as it is now. */
            412: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description invalid: a field cannot be taken; each is named in `errors`. */
            422: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description precondition-required: the If-Match header is missing. */
            428: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description too-many: more was asked than is allowed in so short a time; Retry-After says in how many seconds to try again. */
            429: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
        };
    };
    listParentCorrectionsPairings: {
        parameters: {
            query?: never;
            header?: never;
            path: {
                id: string;
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["ParentCorrectionsView"];
                };
            };
            /** @description sign-in: only a member may do this, or the token is unknown, revoked or expired. */
            401: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description forbidden: your role or your token does not include this, or the record is another keeper’s. */
            403: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description not-found: there is no such record. */
            404: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description too-many: more was asked than is allowed in so short a time; Retry-After says in how many seconds to try again. */
            429: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
        };
    };
    addPairingMemberPairings: {
        parameters: {
            query?: never;
            header: {
                /** @description ETag of the record as it was read, such as "3"; a list of them; or * for whatever is there. */
                "If-Match": string;
            };
            path: {
                id: string;
            };
            cookie?: never;
        };
        requestBody: {
            content: {
                "application/json": components["schemas"]["NewMemberRequest"];
            };
        };
        responses: {
            201: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["PairingView"];
                };
            };
            /** @description malformed: the request cannot be read as JSON. */
            400: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description sign-in: only a member may do this, or the token is unknown, revoked or expired. */
            401: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description forbidden: your role or your token does not include this, or the record is another keeper’s. */
            403: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description not-found: there is no such record. */
            404: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description conflict or loop: a rule of the register stands against it as things are now; the records in the way are named. */
            409: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description stale: somebody changed the record meanwhile; `current` is the record as it is now. */
            412: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description invalid: a field cannot be taken; each is named in `errors`. */
            422: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description precondition-required: the If-Match header is missing. */
            428: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description too-many: more was asked than is allowed in so short a time; Retry-After says in how many seconds to try again. */
            429: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
        };
    };
    removePairingMemberPairings: {
        parameters: {
            query?: never;
            header: {
                /** @description ETag of the record as it was read, such as "3"; a list of them; or * for whatever is there. */
                "If-Match": string;
            };
            path: {
                id: string;
                memberId: string;
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["PairingView"];
                };
            };
            /** @description sign-in: only a member may do this, or the token is unknown, revoked or expired. */
            401: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description forbidden: your role or your token does not include this, or the record is another keeper’s. */
            403: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description not-found: there is no such record. */
            404: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description conflict or loop: a rule of the register stands against it as things are now; the records in the way are named. */
            409: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description stale: somebody changed the record meanwhile; `current` is the record as it is now. */
            412: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description precondition-required: the If-Match header is missing. */
            428: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description too-many: more was asked than is allowed in so short a time; Retry-After says in how many seconds to try again. */
            429: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
        };
    };
    changePairingMemberPairings: {
        parameters: {
            query?: never;
            header: {
                /** @description ETag of the record as it was read, such as "3"; a list of them; or * for whatever is there. */
                "If-Match": string;
            };
            path: {
                id: string;
                memberId: string;
            };
            cookie?: never;
        };
        requestBody: {
            content: {
                "application/json": components["schemas"]["MemberChangeRequest"];
            };
        };
        responses: {
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["PairingView"];
                };
            };
            /** @description malformed: the request cannot be read as JSON. */
            400: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description sign-in: only a member may do this, or the token is unknown, revoked or expired. */
            401: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description forbidden: your role or your token does not include this, or the record is another keeper’s. */
            403: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description not-found: there is no such record. */
            404: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description conflict or loop: a rule of the register stands against it as things are now; the records in the way are named. */
            409: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description stale: somebody changed the record meanwhile; `current` is the record as it is now. */
            412: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description invalid: a field cannot be taken; each is named in `errors`. */
            422: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description precondition-required: the If-Match header is missing. */
            428: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description too-many: more was asked than is allowed in so short a time; Retry-After says in how many seconds to try again. */
            429: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
        };
    };
    withdrawPairingPairings: {
        parameters: {
            query?: never;
            header: {
                /** @description ETag of the record as it was read, such as "3"; a list of them; or * for whatever is there. */
                "If-Match": string;
            };
            path: {
                id: string;
            };
            cookie?: never;
        };
        requestBody: {
            content: {
                "application/json": components["schemas"]["WithdrawalRequest"];
            };
        };
        responses: {
            201: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["PairingView"];
                };
            };
            /** @description malformed: the request cannot be read as JSON. */
            400: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description sign-in: only a member may do this, or the token is unknown, revoked or expired. */
            401: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description forbidden: your role or your token does not include this, or the record is another keeper’s. */
            403: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description not-found: there is no such record. */
            404: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description conflict or loop: a rule of the register stands against it as things are now; the records in the way are named. */
            409: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description stale: somebody changed the record meanwhile; `current` is the record as it is now. */
            412: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description invalid: a field cannot be taken; each is named in `errors`. */
            422: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description precondition-required: the If-Match header is missing. */
            428: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description too-many: more was asked than is allowed in so short a time; Retry-After says in how many seconds to try again. */
            429: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
        };
    };
    restorePairingPairings: {
        parameters: {
            query?: never;
            header: {
                /** @description ETag of the record as it was read, such as "3"; a list of them; or * for whatever is there. */
                "If-Match": string;
            };
            path: {
                id: string;
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["PairingView"];
                };
            };
            /** @description sign-in: only a member may do this, or the token is unknown, revoked or expired. */
            401: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description forbidden: your role or your token does not include this, or the record is another keeper’s. */
            403: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description not-found: there is no such record. */
            404: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description conflict or loop: a rule of the register stands against it as things are now; the records in the way are named. */
            409: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description stale: somebody changed the record meanwhile; `current` is the record as it is now. */
            412: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description precondition-required: the If-Match header is missing. */
            428: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description too-many: more was asked than is allowed in so short a time; Retry-After says in how many seconds to try again. */
            429: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
        };
    };
    listClutchesClutches: {
        parameters: {
            query?: {
                /** @description How many items at most; 50 if left out. */
                limit?: number;
                /** @description Go on after this point: the `next` of the page before. */
                after?: string;
                /** @description Also count all items that match. */
                total?: boolean;
                /** @description Clutches of this keeper. */
                keeperId?: string;
                /** @description Clutches laid in this pairing. */
                pairingId?: string;
                /** @description Clutches of which this animal may be a parent. */
                parentId?: string;
                /** @description Clutches of which a possible parent or a young stands in this line. */
                lineId?: string;
                /** @description Clutches in the egg, in the water, out of it, or ended without young. */
                stage?: "egg" | "water" | "out" | "ended";
                /** @description Exactly this code; case does not matter. */
                code?: string;
                /** @description Laid, or perhaps laid, in this year or later. */
                laidFrom?: number;
                /** @description Laid, or perhaps laid, in this year or before. */
                laidTo?: number;
            };
            header?: never;
            path?: never;
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            /** @description One page of the list. */
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": {
                        items: components["schemas"]["ClutchItemView"][];
                        /** @description Send it as `after` to go on; null at the end. */
                        next: string | null;
                        /** @description How many match in all; only with `total=true`. */
                        total?: number;
                    };
                };
            };
            /** @description sign-in: only a member may do this, or the token is unknown, revoked or expired. */
            401: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description forbidden: your role or your token does not include this, or the record is another keeper’s. */
            403: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description invalid: a field cannot be taken; each is named in `errors`. */
            422: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description too-many: more was asked than is allowed in so short a time; Retry-After says in how many seconds to try again. */
            429: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
        };
    };
    addClutchClutches: {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        requestBody: {
            content: {
                "application/json": components["schemas"]["NewClutchRequest"];
            };
        };
        responses: {
            201: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["NewClutchView"];
                };
            };
            /** @description malformed: the request cannot be read as JSON. */
            400: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description sign-in: only a member may do this, or the token is unknown, revoked or expired. */
            401: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description forbidden: your role or your token does not include this, or the record is another keeper’s. */
            403: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description conflict or loop: a rule of the register stands against it as things are now; the records in the way are named. */
            409: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description invalid: a field cannot be taken; each is named in `errors`. */
            422: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description too-many: more was asked than is allowed in so short a time; Retry-After says in how many seconds to try again. */
            429: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
        };
    };
    getClutchClutches: {
        parameters: {
            query?: never;
            header?: never;
            path: {
                id: string;
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["ClutchView"];
                };
            };
            /** @description sign-in: only a member may do this, or the token is unknown, revoked or expired. */
            401: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description forbidden: your role or your token does not include this, or the record is another keeper’s. */
            403: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description not-found: there is no such record. */
            404: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description too-many: more was asked than is allowed in so short a time; Retry-After says in how many seconds to try again. */
            429: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
        };
    };
    changeClutchClutches: {
        parameters: {
            query?: never;
            header: {
                /** @description ETag of the record as it was read, such as "3"; a list of them; or * for whatever is there. */
                "If-Match": string;
            };
            path: {
                id: string;
            };
            cookie?: never;
        };
        requestBody: {
            content: {
                "application/json": components["schemas"]["ClutchChangeRequest"];
            };
        };
        responses: {
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["ClutchView"];
                };
            };
            /** @description malformed: the request cannot be read as JSON. */
            400: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description sign-in: only a member may do this, or the token is unknown, revoked or expired. */
            401: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description forbidden: your role or your token does not include this, or the record is another keeper’s. */
            403: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description not-found: there is no such record. */
            404: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description conflict or loop: a rule of the register stands against it as things are now; the records in the way are named. */
            409: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description stale: somebody changed the record meanwhile; `current` is the record as it is now. */
            412: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description invalid: a field cannot be taken; each is named in `errors`. */
            422: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description precondition-required: the If-Match header is missing. */
            428: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description too-many: more was asked than is allowed in so short a time; Retry-After says in how many seconds to try again. */
            429: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
        };
    };
    raiseOffspringClutches: {
        parameters: {
            query?: never;
            header?: never;
            path: {
                id: string;
            };
            cookie?: never;
        };
        requestBody: {
            content: {
                "application/json": components["schemas"]["OffspringRequest"];
            };
        };
        responses: {
            201: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["OffspringView"];
                };
            };
            /** @description malformed: the request cannot be read as JSON. */
            400: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description sign-in: only a member may do this, or the token is unknown, revoked or expired. */
            401: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description forbidden: your role or your token does not include this, or the record is another keeper’s. */
            403: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description not-found: there is no such record. */
            404: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description conflict or loop: a rule of the register stands against it as things are now; the records in the way are named. */
            409: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description invalid: a field cannot be taken; each is named in `errors`. */
            422: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description too-many: more was asked than is allowed in so short a time; Retry-After says in how many seconds to try again. */
            429: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
        };
    };
    withdrawClutchClutches: {
        parameters: {
            query?: never;
            header: {
                /** @description ETag of the record as it was read, such as "3"; a list of them; or * for whatever is there. */
                "If-Match": string;
            };
            path: {
                id: string;
            };
            cookie?: never;
        };
        requestBody: {
            content: {
                "application/json": components["schemas"]["WithdrawalRequest"];
            };
        };
        responses: {
            201: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["ClutchView"];
                };
            };
            /** @description malformed: the request cannot be read as JSON. */
            400: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description sign-in: only a member may do this, or the token is unknown, revoked or expired. */
            401: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description forbidden: your role or your token does not include this, or the record is another keeper’s. */
            403: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description not-found: there is no such record. */
            404: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description conflict or loop: a rule of the register stands against it as things are now; the records in the way are named. */
            409: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description stale: somebody changed the record meanwhile; `current` is the record as it is now. */
            412: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description invalid: a field cannot be taken; each is named in `errors`. */
            422: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description precondition-required: the If-Match header is missing. */
            428: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description too-many: more was asked than is allowed in so short a time; Retry-After says in how many seconds to try again. */
            429: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
        };
    };
    restoreClutchClutches: {
        parameters: {
            query?: never;
            header: {
                /** @description ETag of the record as it was read, such as "3"; a list of them; or * for whatever is there. */
                "If-Match": string;
            };
            path: {
                id: string;
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["ClutchView"];
                };
            };
            /** @description sign-in: only a member may do this, or the token is unknown, revoked or expired. */
            401: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description forbidden: your role or your token does not include this, or the record is another keeper’s. */
            403: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description not-found: there is no such record. */
            404: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description conflict or loop: a rule of the register stands against it as things are now; the records in the way are named. */
            409: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description stale: somebody changed the record meanwhile; `current` is the record as it is now. */
            412: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description precondition-required: the If-Match header is missing. */
            428: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description too-many: more was asked than is allowed in so short a time; Retry-After says in how many seconds to try again. */
            429: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
        };
    };
    listObservationsObservations: {
        parameters: {
            query?: {
                /** @description How many items at most; 50 if left out. */
                limit?: number;
                /** @description Go on after this point: the `next` of the page before. */
                after?: string;
                /** @description Also count all items that match. */
                total?: boolean;
                /** @description Remarks on this animal. */
                individualId?: string;
                /** @description Remarks on this pairing. */
                pairingId?: string;
                /** @description Remarks on this clutch. */
                clutchId?: string;
                /** @description Remarks on this source. */
                sourceId?: string;
                /** @description Kind of remark. */
                kind?: "note" | "measurement" | "health" | "behaviour";
                /** @description Visibility. */
                visibility?: "private" | "club" | "public";
            };
            header?: never;
            path?: never;
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            /** @description One page of the list. */
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": {
                        items: components["schemas"]["ObservationView"][];
                        /** @description Send it as `after` to go on; null at the end. */
                        next: string | null;
                        /** @description How many match in all; only with `total=true`. */
                        total?: number;
                    };
                };
            };
            /** @description sign-in: only a member may do this, or the token is unknown, revoked or expired. */
            401: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description forbidden: your role or your token does not include this, or the record is another keeper’s. */
            403: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description invalid: a field cannot be taken; each is named in `errors`. */
            422: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description too-many: more was asked than is allowed in so short a time; Retry-After says in how many seconds to try again. */
            429: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
        };
    };
    addObservationObservations: {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        requestBody: {
            content: {
                "application/json": components["schemas"]["NewObservationRequest"];
            };
        };
        responses: {
            201: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["ObservationView"];
                };
            };
            /** @description malformed: the request cannot be read as JSON. */
            400: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description sign-in: only a member may do this, or the token is unknown, revoked or expired. */
            401: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description forbidden: your role or your token does not include this, or the record is another keeper’s. */
            403: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description conflict or loop: a rule of the register stands against it as things are now; the records in the way are named. */
            409: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description invalid: a field cannot be taken; each is named in `errors`. */
            422: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description too-many: more was asked than is allowed in so short a time; Retry-After says in how many seconds to try again. */
            429: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
        };
    };
    getObservationObservations: {
        parameters: {
            query?: never;
            header?: never;
            path: {
                id: string;
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["ObservationView"];
                };
            };
            /** @description sign-in: only a member may do this, or the token is unknown, revoked or expired. */
            401: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description forbidden: your role or your token does not include this, or the record is another keeper’s. */
            403: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description not-found: there is no such record. */
            404: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description too-many: more was asked than is allowed in so short a time; Retry-After says in how many seconds to try again. */
            429: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
        };
    };
    changeObservationObservations: {
        parameters: {
            query?: never;
            header: {
                /** @description ETag of the record as it was read, such as "3"; a list of them; or * for whatever is there. */
                "If-Match": string;
            };
            path: {
                id: string;
            };
            cookie?: never;
        };
        requestBody: {
            content: {
                "application/json": components["schemas"]["ObservationChangeRequest"];
            };
        };
        responses: {
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["ObservationView"];
                };
            };
            /** @description malformed: the request cannot be read as JSON. */
            400: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description sign-in: only a member may do this, or the token is unknown, revoked or expired. */
            401: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description forbidden: your role or your token does not include this, or the record is another keeper’s. */
            403: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description not-found: there is no such record. */
            404: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description conflict or loop: a rule of the register stands against it as things are now; the records in the way are named. */
            409: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description stale: somebody changed the record meanwhile; `current` is the record as it is now. */
            412: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description invalid: a field cannot be taken; each is named in `errors`. */
            422: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description precondition-required: the If-Match header is missing. */
            428: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description too-many: more was asked than is allowed in so short a time; Retry-After says in how many seconds to try again. */
            429: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
        };
    };
    withdrawObservationObservations: {
        parameters: {
            query?: never;
            header: {
                /** @description ETag of the record as it was read, such as "3"; a list of them; or * for whatever is there. */
                "If-Match": string;
            };
            path: {
                id: string;
            };
            cookie?: never;
        };
        requestBody: {
            content: {
                "application/json": components["schemas"]["WithdrawalRequest"];
            };
        };
        responses: {
            201: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["ObservationView"];
                };
            };
            /** @description malformed: the request cannot be read as JSON. */
            400: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description sign-in: only a member may do this, or the token is unknown, revoked or expired. */
            401: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description forbidden: your role or your token does not include this, or the record is another keeper’s. */
            403: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description not-found: there is no such record. */
            404: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description conflict or loop: a rule of the register stands against it as things are now; the records in the way are named. */
            409: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description stale: somebody changed the record meanwhile; `current` is the record as it is now. */
            412: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description invalid: a field cannot be taken; each is named in `errors`. */
            422: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description precondition-required: the If-Match header is missing. */
            428: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description too-many: more was asked than is allowed in so short a time; Retry-After says in how many seconds to try again. */
            429: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
        };
    };
    restoreObservationObservations: {
        parameters: {
            query?: never;
            header: {
                /** @description ETag of the record as it was read, such as "3"; a list of them; or * for whatever is there. */
                "If-Match": string;
            };
            path: {
                id: string;
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["ObservationView"];
                };
            };
            /** @description sign-in: only a member may do this, or the token is unknown, revoked or expired. */
            401: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description forbidden: your role or your token does not include this, or the record is another keeper’s. */
            403: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description not-found: there is no such record. */
            404: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description conflict or loop: a rule of the register stands against it as things are now; the records in the way are named. */
            409: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description stale: somebody changed the record meanwhile; `current` is the record as it is now. */
            412: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description precondition-required: the If-Match header is missing. */
            428: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description too-many: more was asked than is allowed in so short a time; Retry-After says in how many seconds to try again. */
            429: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
        };
    };
    confirmIndividualWarningWarnings: {
        parameters: {
            query?: never;
            header?: never;
            path: {
                id: string;
                code: string;
            };
            cookie?: never;
        };
        requestBody: {
            content: {
                "application/json": components["schemas"]["ConfirmationRequest"];
            };
        };
        responses: {
            201: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["WarningView"];
                };
            };
            /** @description malformed: the request cannot be read as JSON. */
            400: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description sign-in: only a member may do this, or the token is unknown, revoked or expired. */
            401: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description forbidden: your role or your token does not include this, or the record is another keeper’s. */
            403: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description not-found: there is no such record. */
            404: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description invalid: a field cannot be taken; each is named in `errors`. */
            422: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description too-many: more was asked than is allowed in so short a time; Retry-After says in how many seconds to try again. */
            429: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
        };
    };
    unconfirmIndividualWarningWarnings: {
        parameters: {
            query?: never;
            header?: never;
            path: {
                id: string;
                code: string;
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            /** @description The warning stands again. */
            204: {
                headers: {
                    [name: string]: unknown;
                };
                content?: never;
            };
            /** @description sign-in: only a member may do this, or the token is unknown, revoked or expired. */
            401: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description forbidden: your role or your token does not include this, or the record is another keeper’s. */
            403: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description not-found: there is no such record. */
            404: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description too-many: more was asked than is allowed in so short a time; Retry-After says in how many seconds to try again. */
            429: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
        };
    };
    confirmClutchWarningWarnings: {
        parameters: {
            query?: never;
            header?: never;
            path: {
                id: string;
                code: string;
            };
            cookie?: never;
        };
        requestBody: {
            content: {
                "application/json": components["schemas"]["ConfirmationRequest"];
            };
        };
        responses: {
            201: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["WarningView"];
                };
            };
            /** @description malformed: the request cannot be read as JSON. */
            400: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description sign-in: only a member may do this, or the token is unknown, revoked or expired. */
            401: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description forbidden: your role or your token does not include this, or the record is another keeper’s. */
            403: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description not-found: there is no such record. */
            404: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description invalid: a field cannot be taken; each is named in `errors`. */
            422: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description too-many: more was asked than is allowed in so short a time; Retry-After says in how many seconds to try again. */
            429: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
        };
    };
    unconfirmClutchWarningWarnings: {
        parameters: {
            query?: never;
            header?: never;
            path: {
                id: string;
                code: string;
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            /** @description The warning stands again. */
            204: {
                headers: {
                    [name: string]: unknown;
                };
                content?: never;
            };
            /** @description sign-in: only a member may do this, or the token is unknown, revoked or expired. */
            401: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description forbidden: your role or your token does not include this, or the record is another keeper’s. */
            403: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description not-found: there is no such record. */
            404: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description too-many: more was asked than is allowed in so short a time; Retry-After says in how many seconds to try again. */
            429: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
        };
    };
    compareRecordsMerges: {
        parameters: {
            query: {
                /** @description Id or registry number of the record that would go on. */
                kept: string;
                /** @description Id or registry number of the record that would be withdrawn in its favour. */
                duplicate: string;
            };
            header?: never;
            path?: never;
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["MergeComparisonView"];
                };
            };
            /** @description sign-in: only a member may do this, or the token is unknown, revoked or expired. */
            401: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description forbidden: your role or your token does not include this, or the record is another keeper’s. */
            403: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description invalid: a field cannot be taken; each is named in `errors`. */
            422: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description too-many: more was asked than is allowed in so short a time; Retry-After says in how many seconds to try again. */
            429: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
        };
    };
    mergeRecordsMerges: {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        requestBody: {
            content: {
                "application/json": components["schemas"]["MergeRequest"];
            };
        };
        responses: {
            201: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["MergeView"];
                };
            };
            /** @description malformed: the request cannot be read as JSON. */
            400: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description sign-in: only a member may do this, or the token is unknown, revoked or expired. */
            401: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description forbidden: your role or your token does not include this, or the record is another keeper’s. */
            403: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description not-found: there is no such record. */
            404: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description conflict or loop: a rule of the register stands against it as things are now; the records in the way are named. */
            409: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description stale: somebody changed the record meanwhile; `current` is the record as it is now. */
            412: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description invalid: a field cannot be taken; each is named in `errors`. */
            422: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description too-many: more was asked than is allowed in so short a time; Retry-After says in how many seconds to try again. */
            429: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
        };
    };
    getMergeMerges: {
        parameters: {
            query?: never;
            header?: never;
            path: {
                id: string;
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["MergeView"];
                };
            };
            /** @description sign-in: only a member may do this, or the token is unknown, revoked or expired. */
            401: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description forbidden: your role or your token does not include this, or the record is another keeper’s. */
            403: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description not-found: there is no such record. */
            404: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description too-many: more was asked than is allowed in so short a time; Retry-After says in how many seconds to try again. */
            429: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
        };
    };
    undoMergeMerges: {
        parameters: {
            query?: never;
            header?: never;
            path: {
                id: string;
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["MergeView"];
                };
            };
            /** @description sign-in: only a member may do this, or the token is unknown, revoked or expired. */
            401: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description forbidden: your role or your token does not include this, or the record is another keeper’s. */
            403: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description not-found: there is no such record. */
            404: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description conflict or loop: a rule of the register stands against it as things are now; the records in the way are named. */
            409: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description too-many: more was asked than is allowed in so short a time; Retry-After says in how many seconds to try again. */
            429: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
        };
    };
    listClaimsClaims: {
        parameters: {
            query?: {
                /** @description How many items at most; 50 if left out. */
                limit?: number;
                /** @description Go on after this point: the `next` of the page before. */
                after?: string;
                /** @description Also count all items that match. */
                total?: boolean;
                /** @description Claims about this source. */
                sourceId?: string;
                /** @description Claims about this line. */
                lineId?: string;
                /** @description Claims about this animal. */
                individualId?: string;
                /** @description Aspect. */
                aspect?: "locality" | "trade-name";
            };
            header?: never;
            path?: never;
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            /** @description One page of the list. */
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": {
                        items: components["schemas"]["ClaimView"][];
                        /** @description Send it as `after` to go on; null at the end. */
                        next: string | null;
                        /** @description How many match in all; only with `total=true`. */
                        total?: number;
                    };
                };
            };
            /** @description sign-in: only a member may do this, or the token is unknown, revoked or expired. */
            401: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description forbidden: your role or your token does not include this, or the record is another keeper’s. */
            403: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description invalid: a field cannot be taken; each is named in `errors`. */
            422: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description too-many: more was asked than is allowed in so short a time; Retry-After says in how many seconds to try again. */
            429: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
        };
    };
    addClaimClaims: {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        requestBody: {
            content: {
                "application/json": components["schemas"]["NewClaimRequest"];
            };
        };
        responses: {
            201: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["ClaimView"];
                };
            };
            /** @description malformed: the request cannot be read as JSON. */
            400: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description sign-in: only a member may do this, or the token is unknown, revoked or expired. */
            401: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description forbidden: your role or your token does not include this, or the record is another keeper’s. */
            403: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description conflict or loop: a rule of the register stands against it as things are now; the records in the way are named. */
            409: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description invalid: a field cannot be taken; each is named in `errors`. */
            422: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description too-many: more was asked than is allowed in so short a time; Retry-After says in how many seconds to try again. */
            429: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
        };
    };
    getClaimClaims: {
        parameters: {
            query?: never;
            header?: never;
            path: {
                id: string;
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["ClaimView"];
                };
            };
            /** @description sign-in: only a member may do this, or the token is unknown, revoked or expired. */
            401: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description forbidden: your role or your token does not include this, or the record is another keeper’s. */
            403: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description not-found: there is no such record. */
            404: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description too-many: more was asked than is allowed in so short a time; Retry-After says in how many seconds to try again. */
            429: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
        };
    };
    changeClaimClaims: {
        parameters: {
            query?: never;
            header: {
                /** @description ETag of the record as it was read, such as "3"; a list of them; or * for whatever is there. */
                "If-Match": string;
            };
            path: {
                id: string;
            };
            cookie?: never;
        };
        requestBody: {
            content: {
                "application/json": components["schemas"]["ClaimChangeRequest"];
            };
        };
        responses: {
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["ClaimView"];
                };
            };
            /** @description malformed: the request cannot be read as JSON. */
            400: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description sign-in: only a member may do this, or the token is unknown, revoked or expired. */
            401: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description forbidden: your role or your token does not include this, or the record is another keeper’s. */
            403: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description not-found: there is no such record. */
            404: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description conflict or loop: a rule of the register stands against it as things are now; the records in the way are named. */
            409: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description stale: somebody changed the record meanwhile; `current` is the record as it is now. */
            412: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description invalid: a field cannot be taken; each is named in `errors`. */
            422: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description precondition-required: the If-Match header is missing. */
            428: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description too-many: more was asked than is allowed in so short a time; Retry-After says in how many seconds to try again. */
            429: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
        };
    };
    withdrawClaimClaims: {
        parameters: {
            query?: never;
            header: {
                /** @description ETag of the record as it was read, such as "3"; a list of them; or * for whatever is there. */
                "If-Match": string;
            };
            path: {
                id: string;
            };
            cookie?: never;
        };
        requestBody: {
            content: {
                "application/json": components["schemas"]["WithdrawalRequest"];
            };
        };
        responses: {
            201: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["ClaimView"];
                };
            };
            /** @description malformed: the request cannot be read as JSON. */
            400: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description sign-in: only a member may do this, or the token is unknown, revoked or expired. */
            401: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description forbidden: your role or your token does not include this, or the record is another keeper’s. */
            403: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description not-found: there is no such record. */
            404: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description conflict or loop: a rule of the register stands against it as things are now; the records in the way are named. */
            409: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description stale: somebody changed the record meanwhile; `current` is the record as it is now. */
            412: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description invalid: a field cannot be taken; each is named in `errors`. */
            422: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description precondition-required: the If-Match header is missing. */
            428: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description too-many: more was asked than is allowed in so short a time; Retry-After says in how many seconds to try again. */
            429: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
        };
    };
    restoreClaimClaims: {
        parameters: {
            query?: never;
            header: {
                /** @description ETag of the record as it was read, such as "3"; a list of them; or * for whatever is there. */
                "If-Match": string;
            };
            path: {
                id: string;
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["ClaimView"];
                };
            };
            /** @description sign-in: only a member may do this, or the token is unknown, revoked or expired. */
            401: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description forbidden: your role or your token does not include this, or the record is another keeper’s. */
            403: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description not-found: there is no such record. */
            404: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description conflict or loop: a rule of the register stands against it as things are now; the records in the way are named. */
            409: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description stale: somebody changed the record meanwhile; `current` is the record as it is now. */
            412: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description precondition-required: the If-Match header is missing. */
            428: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description too-many: more was asked than is allowed in so short a time; Retry-After says in how many seconds to try again. */
            429: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
        };
    };
    listEvidenceEvidence: {
        parameters: {
            query?: {
                /** @description How many items at most; 50 if left out. */
                limit?: number;
                /** @description Go on after this point: the `next` of the page before. */
                after?: string;
                /** @description Also count all items that match. */
                total?: boolean;
                /** @description Evidence of this claim. */
                claimId?: string;
                /** @description Whether it was reviewed, and how. */
                review?: "pending" | "accepted" | "rejected";
            };
            header?: never;
            path?: never;
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            /** @description One page of the list. */
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": {
                        items: components["schemas"]["EvidenceView"][];
                        /** @description Send it as `after` to go on; null at the end. */
                        next: string | null;
                        /** @description How many match in all; only with `total=true`. */
                        total?: number;
                    };
                };
            };
            /** @description sign-in: only a member may do this, or the token is unknown, revoked or expired. */
            401: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description forbidden: your role or your token does not include this, or the record is another keeper’s. */
            403: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description invalid: a field cannot be taken; each is named in `errors`. */
            422: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description too-many: more was asked than is allowed in so short a time; Retry-After says in how many seconds to try again. */
            429: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
        };
    };
    addEvidenceEvidence: {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        requestBody: {
            content: {
                "application/json": components["schemas"]["NewEvidenceRequest"];
            };
        };
        responses: {
            201: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["EvidenceView"];
                };
            };
            /** @description malformed: the request cannot be read as JSON. */
            400: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description sign-in: only a member may do this, or the token is unknown, revoked or expired. */
            401: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description forbidden: your role or your token does not include this, or the record is another keeper’s. */
            403: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description conflict or loop: a rule of the register stands against it as things are now; the records in the way are named. */
            409: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description invalid: a field cannot be taken; each is named in `errors`. */
            422: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description too-many: more was asked than is allowed in so short a time; Retry-After says in how many seconds to try again. */
            429: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
        };
    };
    getEvidenceEvidence: {
        parameters: {
            query?: never;
            header?: never;
            path: {
                id: string;
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["EvidenceView"];
                };
            };
            /** @description sign-in: only a member may do this, or the token is unknown, revoked or expired. */
            401: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description forbidden: your role or your token does not include this, or the record is another keeper’s. */
            403: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description not-found: there is no such record. */
            404: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description too-many: more was asked than is allowed in so short a time; Retry-After says in how many seconds to try again. */
            429: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
        };
    };
    changeEvidenceEvidence: {
        parameters: {
            query?: never;
            header: {
                /** @description ETag of the record as it was read, such as "3"; a list of them; or * for whatever is there. */
                "If-Match": string;
            };
            path: {
                id: string;
            };
            cookie?: never;
        };
        requestBody: {
            content: {
                "application/json": components["schemas"]["EvidenceChangeRequest"];
            };
        };
        responses: {
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["EvidenceView"];
                };
            };
            /** @description malformed: the request cannot be read as JSON. */
            400: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description sign-in: only a member may do this, or the token is unknown, revoked or expired. */
            401: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description forbidden: your role or your token does not include this, or the record is another keeper’s. */
            403: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description not-found: there is no such record. */
            404: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description conflict or loop: a rule of the register stands against it as things are now; the records in the way are named. */
            409: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description stale: somebody changed the record meanwhile; `current` is the record as it is now. */
            412: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description invalid: a field cannot be taken; each is named in `errors`. */
            422: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description precondition-required: the If-Match header is missing. */
            428: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description too-many: more was asked than is allowed in so short a time; Retry-After says in how many seconds to try again. */
            429: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
        };
    };
    reviewEvidenceEvidence: {
        parameters: {
            query?: never;
            header: {
                /** @description ETag of the record as it was read, such as "3"; a list of them; or * for whatever is there. */
                "If-Match": string;
            };
            path: {
                id: string;
            };
            cookie?: never;
        };
        requestBody: {
            content: {
                "application/json": components["schemas"]["ReviewRequest"];
            };
        };
        responses: {
            201: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["EvidenceView"];
                };
            };
            /** @description malformed: the request cannot be read as JSON. */
            400: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description sign-in: only a member may do this, or the token is unknown, revoked or expired. */
            401: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description forbidden: your role or your token does not include this, or the record is another keeper’s. */
            403: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description not-found: there is no such record. */
            404: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description conflict or loop: a rule of the register stands against it as things are now; the records in the way are named. */
            409: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description stale: somebody changed the record meanwhile; `current` is the record as it is now. */
            412: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description invalid: a field cannot be taken; each is named in `errors`. */
            422: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description precondition-required: the If-Match header is missing. */
            428: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description too-many: more was asked than is allowed in so short a time; Retry-After says in how many seconds to try again. */
            429: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
        };
    };
    withdrawEvidenceEvidence: {
        parameters: {
            query?: never;
            header: {
                /** @description ETag of the record as it was read, such as "3"; a list of them; or * for whatever is there. */
                "If-Match": string;
            };
            path: {
                id: string;
            };
            cookie?: never;
        };
        requestBody: {
            content: {
                "application/json": components["schemas"]["WithdrawalRequest"];
            };
        };
        responses: {
            201: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["EvidenceView"];
                };
            };
            /** @description malformed: the request cannot be read as JSON. */
            400: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description sign-in: only a member may do this, or the token is unknown, revoked or expired. */
            401: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description forbidden: your role or your token does not include this, or the record is another keeper’s. */
            403: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description not-found: there is no such record. */
            404: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description conflict or loop: a rule of the register stands against it as things are now; the records in the way are named. */
            409: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description stale: somebody changed the record meanwhile; `current` is the record as it is now. */
            412: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description invalid: a field cannot be taken; each is named in `errors`. */
            422: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description precondition-required: the If-Match header is missing. */
            428: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description too-many: more was asked than is allowed in so short a time; Retry-After says in how many seconds to try again. */
            429: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
        };
    };
    restoreEvidenceEvidence: {
        parameters: {
            query?: never;
            header: {
                /** @description ETag of the record as it was read, such as "3"; a list of them; or * for whatever is there. */
                "If-Match": string;
            };
            path: {
                id: string;
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["EvidenceView"];
                };
            };
            /** @description sign-in: only a member may do this, or the token is unknown, revoked or expired. */
            401: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description forbidden: your role or your token does not include this, or the record is another keeper’s. */
            403: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description not-found: there is no such record. */
            404: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description conflict or loop: a rule of the register stands against it as things are now; the records in the way are named. */
            409: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description stale: somebody changed the record meanwhile; `current` is the record as it is now. */
            412: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description precondition-required: the If-Match header is missing. */
            428: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description too-many: more was asked than is allowed in so short a time; Retry-After says in how many seconds to try again. */
            429: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
        };
    };
    getEvidenceFileEvidenceFiles: {
        parameters: {
            query?: never;
            header?: {
                /** @description ETag of a copy that is at hand. */
                "If-None-Match"?: string;
            };
            path: {
                id: string;
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            /** @description The file. Its name is made here; a document is a download. */
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/pdf": string;
                    "image/jpeg": string;
                    "image/png": string;
                    "image/webp": string;
                };
            };
            /** @description The copy at hand is this very file. */
            304: {
                headers: {
                    [name: string]: unknown;
                };
                content?: never;
            };
            /** @description sign-in: only a member may do this, or the token is unknown, revoked or expired. */
            401: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description forbidden: your role or your token does not include this, or the record is another keeper’s. */
            403: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description not-found: there is no such record. */
            404: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description too-many: more was asked than is allowed in so short a time; Retry-After says in how many seconds to try again. */
            429: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description unavailable or busy: the service cannot answer now; Retry-After says in how many seconds to try again. */
            503: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
        };
    };
    putEvidenceFileEvidenceFiles: {
        parameters: {
            query?: never;
            header: {
                /** @description ETag of the record as it was read, such as "3"; a list of them; or * for whatever is there. */
                "If-Match": string;
            };
            path: {
                id: string;
            };
            cookie?: never;
        };
        requestBody: {
            content: {
                "application/octet-stream": {
                    /**
                     * Format: binary
                     * @description The file.
                     */
                    file: string;
                };
                "application/pdf": {
                    /**
                     * Format: binary
                     * @description The file.
                     */
                    file: string;
                };
                "multipart/form-data": {
                    /**
                     * Format: binary
                     * @description The file.
                     */
                    file: string;
                };
            };
        };
        responses: {
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["EvidenceView"];
                };
            };
            /** @description malformed: the request cannot be read as JSON. */
            400: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description sign-in: only a member may do this, or the token is unknown, revoked or expired. */
            401: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description forbidden: your role or your token does not include this, or the record is another keeper’s. */
            403: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description not-found: there is no such record. */
            404: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description conflict or loop: a rule of the register stands against it as things are now; the records in the way are named. */
            409: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description stale: somebody changed the record meanwhile; `current` is the record as it is now. */
            412: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description too-large: the request is larger than this address takes. */
            413: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description unsupported-media-type: the body is of a type that is not read here. */
            415: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description invalid: a field cannot be taken; each is named in `errors`. */
            422: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description precondition-required: the If-Match header is missing. */
            428: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description too-many: more was asked than is allowed in so short a time; Retry-After says in how many seconds to try again. */
            429: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description unavailable or busy: the service cannot answer now; Retry-After says in how many seconds to try again. */
            503: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
        };
    };
    listPhotographsPhotographs: {
        parameters: {
            query?: {
                /** @description How many items at most; 50 if left out. */
                limit?: number;
                /** @description Go on after this point: the `next` of the page before. */
                after?: string;
                /** @description Also count all items that match. */
                total?: boolean;
                /** @description Photographs of this animal. */
                individualId?: string;
                /** @description The side that they show. */
                view?: "back" | "side" | "belly" | "other";
            };
            header?: never;
            path?: never;
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            /** @description One page of the list. */
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": {
                        items: components["schemas"]["PhotographRecordView"][];
                        /** @description Send it as `after` to go on; null at the end. */
                        next: string | null;
                        /** @description How many match in all; only with `total=true`. */
                        total?: number;
                    };
                };
            };
            /** @description sign-in: only a member may do this, or the token is unknown, revoked or expired. */
            401: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description forbidden: your role or your token does not include this, or the record is another keeper’s. */
            403: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description invalid: a field cannot be taken; each is named in `errors`. */
            422: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description too-many: more was asked than is allowed in so short a time; Retry-After says in how many seconds to try again. */
            429: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
        };
    };
    addPhotographPhotographs: {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        requestBody: {
            content: {
                "multipart/form-data": components["schemas"]["PhotographForm"];
            };
        };
        responses: {
            201: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["PhotographRecordView"];
                };
            };
            /** @description malformed: the request cannot be read as JSON. */
            400: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description sign-in: only a member may do this, or the token is unknown, revoked or expired. */
            401: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description forbidden: your role or your token does not include this, or the record is another keeper’s. */
            403: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description conflict or loop: a rule of the register stands against it as things are now; the records in the way are named. */
            409: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description too-large: the request is larger than this address takes. */
            413: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description unsupported-media-type: the body is of a type that is not read here. */
            415: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description invalid: a field cannot be taken; each is named in `errors`. */
            422: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description too-many: more was asked than is allowed in so short a time; Retry-After says in how many seconds to try again. */
            429: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description unavailable or busy: the service cannot answer now; Retry-After says in how many seconds to try again. */
            503: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
        };
    };
    getPhotographPhotographs: {
        parameters: {
            query?: never;
            header?: never;
            path: {
                id: string;
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["PhotographRecordView"];
                };
            };
            /** @description sign-in: only a member may do this, or the token is unknown, revoked or expired. */
            401: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description forbidden: your role or your token does not include this, or the record is another keeper’s. */
            403: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description not-found: there is no such record. */
            404: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description too-many: more was asked than is allowed in so short a time; Retry-After says in how many seconds to try again. */
            429: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
        };
    };
    changePhotographPhotographs: {
        parameters: {
            query?: never;
            header: {
                /** @description ETag of the record as it was read, such as "3"; a list of them; or * for whatever is there. */
                "If-Match": string;
            };
            path: {
                id: string;
            };
            cookie?: never;
        };
        requestBody: {
            content: {
                "application/json": components["schemas"]["PhotographChangeRequest"];
            };
        };
        responses: {
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["PhotographRecordView"];
                };
            };
            /** @description malformed: the request cannot be read as JSON. */
            400: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description sign-in: only a member may do this, or the token is unknown, revoked or expired. */
            401: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description forbidden: your role or your token does not include this, or the record is another keeper’s. */
            403: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description not-found: there is no such record. */
            404: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description conflict or loop: a rule of the register stands against it as things are now; the records in the way are named. */
            409: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description stale: somebody changed the record meanwhile; `current` is the record as it is now. */
            412: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description invalid: a field cannot be taken; each is named in `errors`. */
            422: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description precondition-required: the If-Match header is missing. */
            428: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description too-many: more was asked than is allowed in so short a time; Retry-After says in how many seconds to try again. */
            429: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
        };
    };
    getPicturePhotographs: {
        parameters: {
            query?: {
                /** @description small: longest edge at most 640 pixels; whole: at most 4096. whole if left out. */
                size?: "small" | "whole";
            };
            header?: {
                /** @description ETag of a copy that is at hand. */
                "If-None-Match"?: string;
            };
            path: {
                id: string;
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            /** @description The file. Its name is made here; a document is a download. */
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "image/jpeg": string;
                };
            };
            /** @description The copy at hand is this very file. */
            304: {
                headers: {
                    [name: string]: unknown;
                };
                content?: never;
            };
            /** @description sign-in: only a member may do this, or the token is unknown, revoked or expired. */
            401: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description forbidden: your role or your token does not include this, or the record is another keeper’s. */
            403: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description not-found: there is no such record. */
            404: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description invalid: a field cannot be taken; each is named in `errors`. */
            422: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description too-many: more was asked than is allowed in so short a time; Retry-After says in how many seconds to try again. */
            429: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description unavailable or busy: the service cannot answer now; Retry-After says in how many seconds to try again. */
            503: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
        };
    };
    withdrawPhotographPhotographs: {
        parameters: {
            query?: never;
            header: {
                /** @description ETag of the record as it was read, such as "3"; a list of them; or * for whatever is there. */
                "If-Match": string;
            };
            path: {
                id: string;
            };
            cookie?: never;
        };
        requestBody: {
            content: {
                "application/json": components["schemas"]["WithdrawalRequest"];
            };
        };
        responses: {
            201: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["PhotographRecordView"];
                };
            };
            /** @description malformed: the request cannot be read as JSON. */
            400: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description sign-in: only a member may do this, or the token is unknown, revoked or expired. */
            401: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description forbidden: your role or your token does not include this, or the record is another keeper’s. */
            403: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description not-found: there is no such record. */
            404: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description conflict or loop: a rule of the register stands against it as things are now; the records in the way are named. */
            409: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description stale: somebody changed the record meanwhile; `current` is the record as it is now. */
            412: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description invalid: a field cannot be taken; each is named in `errors`. */
            422: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description precondition-required: the If-Match header is missing. */
            428: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description too-many: more was asked than is allowed in so short a time; Retry-After says in how many seconds to try again. */
            429: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
        };
    };
    restorePhotographPhotographs: {
        parameters: {
            query?: never;
            header: {
                /** @description ETag of the record as it was read, such as "3"; a list of them; or * for whatever is there. */
                "If-Match": string;
            };
            path: {
                id: string;
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["PhotographRecordView"];
                };
            };
            /** @description sign-in: only a member may do this, or the token is unknown, revoked or expired. */
            401: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description forbidden: your role or your token does not include this, or the record is another keeper’s. */
            403: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description not-found: there is no such record. */
            404: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description conflict or loop: a rule of the register stands against it as things are now; the records in the way are named. */
            409: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description stale: somebody changed the record meanwhile; `current` is the record as it is now. */
            412: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description precondition-required: the If-Match header is missing. */
            428: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description too-many: more was asked than is allowed in so short a time; Retry-After says in how many seconds to try again. */
            429: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
        };
    };
    findPlacesPlaces: {
        parameters: {
            query?: {
                /** @description Places of this line: of itself, of its animals and of the sources of these. */
                lineId?: string;
                /** @description Places of lines, animals and sources of this species. */
                speciesId?: string;
                /** @description How many places at most; 500 if left out. */
                limit?: number;
            };
            header?: never;
            path?: never;
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["PlacesView"];
                };
            };
            /** @description sign-in: only a member may do this, or the token is unknown, revoked or expired. */
            401: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description forbidden: your role or your token does not include this, or the record is another keeper’s. */
            403: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description invalid: a field cannot be taken; each is named in `errors`. */
            422: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description too-many: more was asked than is allowed in so short a time; Retry-After says in how many seconds to try again. */
            429: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
        };
    };
    getLabelHistoryOfAnimalLabelHistory: {
        parameters: {
            query?: never;
            header?: never;
            path: {
                /** @description Id or registry number of the animal. */
                id: string;
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["LabelHistoryView"];
                };
            };
            /** @description sign-in: only a member may do this, or the token is unknown, revoked or expired. */
            401: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description forbidden: your role or your token does not include this, or the record is another keeper’s. */
            403: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description not-found: there is no such record. */
            404: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description too-many: more was asked than is allowed in so short a time; Retry-After says in how many seconds to try again. */
            429: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
        };
    };
    getLabelHistoryOfLineLabelHistory: {
        parameters: {
            query?: never;
            header?: never;
            path: {
                id: string;
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["LabelHistoryView"];
                };
            };
            /** @description sign-in: only a member may do this, or the token is unknown, revoked or expired. */
            401: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description forbidden: your role or your token does not include this, or the record is another keeper’s. */
            403: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description not-found: there is no such record. */
            404: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description too-many: more was asked than is allowed in so short a time; Retry-After says in how many seconds to try again. */
            429: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
        };
    };
    getOccurrenceOccurrence: {
        parameters: {
            query?: {
                /** @description json: JSON-LD, the usual one; csv: Simple Darwin Core, one row. */
                format?: "json" | "csv";
            };
            header?: never;
            path: {
                /** @description Id or registry number of the animal. */
                id: string;
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            /** @description The animal. */
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/ld+json": {
                        /** @description What the prefix dwc stands for. */
                        "@context": {
                            [key: string]: string;
                        };
                        /** @description The record, as an urn:uuid: IRI. */
                        "@id": string;
                        /** @description dwc:Occurrence. */
                        "@type": string;
                        /** @description The record, as an urn:uuid: IRI; it never changes. */
                        "dwc:occurrenceID": string;
                        /** @description LivingSpecimen: the animal lives, or lived, in a collection. */
                        "dwc:basisOfRecord": string;
                        /** @description Registry number of the animal, the same with every keeper. */
                        "dwc:organismID"?: string;
                        /** @description The code that its keeper calls it by. */
                        "dwc:organismName"?: string;
                        /** @description Scientific name of its species as the register has it. */
                        "dwc:scientificName"?: string;
                        /** @description Animalia. */
                        "dwc:kingdom"?: string;
                        /** @description male or female; left out where it is not known. */
                        "dwc:sex"?: string;
                        /** @description captive. */
                        "dwc:degreeOfEstablishment"?: string;
                        /** @description ISO 8601 day, month, year or interval: of hatching, or where it was collected in the wild, of that. Left out where the date is open at an end. */
                        "dwc:eventDate"?: string;
                        /** @description The same date as the register has it, EDTF. */
                        "dwc:verbatimEventDate"?: string;
                        /** @description What the date is the date of. */
                        "dwc:eventRemarks"?: string;
                        /** @description The claim that the place stands in, as an urn:uuid: IRI. */
                        "dwc:locationID"?: string;
                        /** @description Country of the claimed place, ISO 3166-1. */
                        "dwc:countryCode"?: string;
                        /** @description Province or state of the claimed place. */
                        "dwc:stateProvince"?: string;
                        /** @description The claimed place in words of today; withheld from strangers. */
                        "dwc:locality"?: string;
                        /** @description The words of the label or list, unaltered; withheld from strangers. */
                        "dwc:verbatimLocality"?: string;
                        /** @description Degrees, south negative; for strangers the centre of a cell of 0.1 degree or coarser. */
                        "dwc:decimalLatitude"?: number;
                        /** @description Degrees, west negative; likewise. */
                        "dwc:decimalLongitude"?: number;
                        /** @description Datum of the coordinates. */
                        "dwc:geodeticDatum"?: string;
                        /** @description Radius of the smallest circle that holds the whole place; never 0. */
                        "dwc:coordinateUncertaintyInMeters"?: number;
                        /** @description Who found the coordinates; withheld from strangers. */
                        "dwc:georeferencedBy"?: string;
                        /** @description By which maps or papers; withheld from strangers. */
                        "dwc:georeferenceSources"?: string;
                        /** @description requires georeference, or requires verification: nobody in the club visits the place. */
                        "dwc:georeferenceVerificationStatus"?: string;
                        /** @description Whose word the place is; withheld from strangers. */
                        "dwc:locationAccordingTo"?: string;
                        /** @description What the claim says, how well it stands and why. */
                        "dwc:locationRemarks"?: string;
                        /** @description How the place was made coarser for whoever asks. */
                        "dwc:dataGeneralizations"?: string;
                        /** @description What is held back from whoever asks. */
                        "dwc:informationWithheld"?: string;
                    };
                    "text/csv": string;
                };
            };
            /** @description sign-in: only a member may do this, or the token is unknown, revoked or expired. */
            401: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description forbidden: your role or your token does not include this, or the record is another keeper’s. */
            403: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description not-found: there is no such record. */
            404: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description invalid: a field cannot be taken; each is named in `errors`. */
            422: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description too-many: more was asked than is allowed in so short a time; Retry-After says in how many seconds to try again. */
            429: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
        };
    };
    listAcknowledgementsAcknowledgements: {
        parameters: {
            query?: {
                /** @description How many items at most; 50 if left out. */
                limit?: number;
                /** @description Go on after this point: the `next` of the page before. */
                after?: string;
                /** @description Also count all items that match. */
                total?: boolean;
                /** @description Those of this animal. */
                individualId?: string;
                /** @description Those of this line, without those of its animals. */
                lineId?: string;
            };
            header?: never;
            path?: never;
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            /** @description One page of the list. */
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": {
                        items: components["schemas"]["AcknowledgementView"][];
                        /** @description Send it as `after` to go on; null at the end. */
                        next: string | null;
                        /** @description How many match in all; only with `total=true`. */
                        total?: number;
                    };
                };
            };
            /** @description sign-in: only a member may do this, or the token is unknown, revoked or expired. */
            401: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description forbidden: your role or your token does not include this, or the record is another keeper’s. */
            403: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description invalid: a field cannot be taken; each is named in `errors`. */
            422: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description too-many: more was asked than is allowed in so short a time; Retry-After says in how many seconds to try again. */
            429: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
        };
    };
    addAcknowledgementAcknowledging: {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        requestBody: {
            content: {
                "application/json": components["schemas"]["NewAcknowledgementRequest"];
            };
        };
        responses: {
            201: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["AcknowledgementView"];
                };
            };
            /** @description malformed: the request cannot be read as JSON. */
            400: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description sign-in: only a member may do this, or the token is unknown, revoked or expired. */
            401: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description forbidden: your role or your token does not include this, or the record is another keeper’s. */
            403: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description conflict or loop: a rule of the register stands against it as things are now; the records in the way are named. */
            409: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description invalid: a field cannot be taken; each is named in `errors`. */
            422: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description too-many: more was asked than is allowed in so short a time; Retry-After says in how many seconds to try again. */
            429: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description unavailable or busy: the service cannot answer now; Retry-After says in how many seconds to try again. */
            503: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
        };
    };
    getAcknowledgementAcknowledgements: {
        parameters: {
            query?: never;
            header?: never;
            path: {
                id: string;
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["AcknowledgementView"];
                };
            };
            /** @description sign-in: only a member may do this, or the token is unknown, revoked or expired. */
            401: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description forbidden: your role or your token does not include this, or the record is another keeper’s. */
            403: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description not-found: there is no such record. */
            404: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description too-many: more was asked than is allowed in so short a time; Retry-After says in how many seconds to try again. */
            429: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
        };
    };
    withdrawAcknowledgementAcknowledgements: {
        parameters: {
            query?: never;
            header: {
                /** @description ETag of the record as it was read, such as "3"; a list of them; or * for whatever is there. */
                "If-Match": string;
            };
            path: {
                id: string;
            };
            cookie?: never;
        };
        requestBody: {
            content: {
                "application/json": components["schemas"]["WithdrawalRequest"];
            };
        };
        responses: {
            201: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["AcknowledgementView"];
                };
            };
            /** @description malformed: the request cannot be read as JSON. */
            400: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description sign-in: only a member may do this, or the token is unknown, revoked or expired. */
            401: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description forbidden: your role or your token does not include this, or the record is another keeper’s. */
            403: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description not-found: there is no such record. */
            404: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description conflict or loop: a rule of the register stands against it as things are now; the records in the way are named. */
            409: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description stale: somebody changed the record meanwhile; `current` is the record as it is now. */
            412: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description invalid: a field cannot be taken; each is named in `errors`. */
            422: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description precondition-required: the If-Match header is missing. */
            428: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description too-many: more was asked than is allowed in so short a time; Retry-After says in how many seconds to try again. */
            429: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
        };
    };
    restoreAcknowledgementAcknowledgements: {
        parameters: {
            query?: never;
            header: {
                /** @description ETag of the record as it was read, such as "3"; a list of them; or * for whatever is there. */
                "If-Match": string;
            };
            path: {
                id: string;
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["AcknowledgementView"];
                };
            };
            /** @description sign-in: only a member may do this, or the token is unknown, revoked or expired. */
            401: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description forbidden: your role or your token does not include this, or the record is another keeper’s. */
            403: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description not-found: there is no such record. */
            404: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description conflict or loop: a rule of the register stands against it as things are now; the records in the way are named. */
            409: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description stale: somebody changed the record meanwhile; `current` is the record as it is now. */
            412: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description precondition-required: the If-Match header is missing. */
            428: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description too-many: more was asked than is allowed in so short a time; Retry-After says in how many seconds to try again. */
            429: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
        };
    };
    getLineageIndividualLineage: {
        parameters: {
            query?: never;
            header?: never;
            path: {
                /** @description Id or registry number of the animal. */
                id: string;
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["LineageView"];
                };
            };
            /** @description sign-in: only a member may do this, or the token is unknown, revoked or expired. */
            401: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description forbidden: your role or your token does not include this, or the record is another keeper’s. */
            403: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description not-found: there is no such record. */
            404: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description too-many: more was asked than is allowed in so short a time; Retry-After says in how many seconds to try again. */
            429: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description unavailable or busy: the service cannot answer now; Retry-After says in how many seconds to try again. */
            503: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
        };
    };
    findCommonAncestorsIndividualLineage: {
        parameters: {
            query?: {
                /** @description Most common ancestors to name, those with the largest parts of F; 50 if left out. The rest is told as a sum. */
                most?: number;
            };
            header?: never;
            path: {
                /** @description Id or registry number of the animal. */
                id: string;
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["CommonAncestorsView"];
                };
            };
            /** @description sign-in: only a member may do this, or the token is unknown, revoked or expired. */
            401: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description forbidden: your role or your token does not include this, or the record is another keeper’s. */
            403: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description not-found: there is no such record. */
            404: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description invalid: a field cannot be taken; each is named in `errors`. */
            422: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description too-many: more was asked than is allowed in so short a time; Retry-After says in how many seconds to try again. */
            429: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description unavailable or busy: the service cannot answer now; Retry-After says in how many seconds to try again. */
            503: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
        };
    };
    listLoopsIndividualLineage: {
        parameters: {
            query?: {
                /** @description Most loops to list, those with the largest parts of F; 20 if left out. The rest is told by common ancestor. */
                most?: number;
                /** @description Most common ancestors to name, those with the largest parts of F; 50 if left out. Those of listed loops are named besides, the rest is told as a sum. */
                ancestors?: number;
                /** @description Lists only loops through this common ancestor: its id or registry number. Of a parent that nobody knows the id of its clutch; of founders that are kin by base kinship the id of their source, or of both sources with a comma between. Everything else is as without it. */
                commonAncestor?: string;
            };
            header?: never;
            path: {
                /** @description Id or registry number of the animal. */
                id: string;
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["InbreedingLoopsView"];
                };
            };
            /** @description sign-in: only a member may do this, or the token is unknown, revoked or expired. */
            401: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description forbidden: your role or your token does not include this, or the record is another keeper’s. */
            403: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description not-found: there is no such record. */
            404: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description invalid: a field cannot be taken; each is named in `errors`. */
            422: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description too-many: more was asked than is allowed in so short a time; Retry-After says in how many seconds to try again. */
            429: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description unavailable or busy: the service cannot answer now; Retry-After says in how many seconds to try again. */
            503: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
        };
    };
    getPedigreeIndividualLineage: {
        parameters: {
            query?: {
                /** @description How many generations of parents to go back; 4 if left out. */
                generations?: number;
            };
            header?: never;
            path: {
                /** @description Id or registry number of the animal. */
                id: string;
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["PedigreeView"];
                };
            };
            /** @description sign-in: only a member may do this, or the token is unknown, revoked or expired. */
            401: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description forbidden: your role or your token does not include this, or the record is another keeper’s. */
            403: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description not-found: there is no such record. */
            404: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description invalid: a field cannot be taken; each is named in `errors`. */
            422: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description too-many: more was asked than is allowed in so short a time; Retry-After says in how many seconds to try again. */
            429: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
        };
    };
    getDescendantsIndividualLineage: {
        parameters: {
            query?: {
                /** @description How many generations of young to go down; 1 if left out. */
                generations?: number;
            };
            header?: never;
            path: {
                /** @description Id or registry number of the animal. */
                id: string;
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["DescendantsView"];
                };
            };
            /** @description sign-in: only a member may do this, or the token is unknown, revoked or expired. */
            401: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description forbidden: your role or your token does not include this, or the record is another keeper’s. */
            403: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description not-found: there is no such record. */
            404: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description invalid: a field cannot be taken; each is named in `errors`. */
            422: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description too-many: more was asked than is allowed in so short a time; Retry-After says in how many seconds to try again. */
            429: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
        };
    };
    getProvenanceProv: {
        parameters: {
            query?: {
                /** @description How many generations of ancestors to tell of; 4 if left out. */
                generations?: number;
            };
            header?: never;
            path: {
                /** @description Id or registry number of the animal. */
                id: string;
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            /** @description A document of PROV-JSON. */
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": {
                        /** @description What each prefix stands for. */
                        prefix: {
                            [key: string]: string;
                        };
                        /** @description Statements of the kind entity, by their names. */
                        entity: {
                            [key: string]: {
                                [key: string]: unknown;
                            };
                        };
                        /** @description Statements of the kind activity, by their names. */
                        activity?: {
                            [key: string]: {
                                [key: string]: unknown;
                            };
                        };
                        /** @description Statements of the kind agent, by their names. */
                        agent?: {
                            [key: string]: {
                                [key: string]: unknown;
                            };
                        };
                        /** @description Statements of the kind wasGeneratedBy, by their names. */
                        wasGeneratedBy?: {
                            [key: string]: {
                                [key: string]: unknown;
                            };
                        };
                        /** @description Statements of the kind used, by their names. */
                        used?: {
                            [key: string]: {
                                [key: string]: unknown;
                            };
                        };
                        /** @description Statements of the kind wasDerivedFrom, by their names. */
                        wasDerivedFrom?: {
                            [key: string]: {
                                [key: string]: unknown;
                            };
                        };
                        /** @description Statements of the kind wasAttributedTo, by their names. */
                        wasAttributedTo?: {
                            [key: string]: {
                                [key: string]: unknown;
                            };
                        };
                        /** @description Statements of the kind wasAssociatedWith, by their names. */
                        wasAssociatedWith?: {
                            [key: string]: {
                                [key: string]: unknown;
                            };
                        };
                        /** @description Statements of the kind wasInfluencedBy, by their names. */
                        wasInfluencedBy?: {
                            [key: string]: {
                                [key: string]: unknown;
                            };
                        };
                    };
                };
            };
            /** @description sign-in: only a member may do this, or the token is unknown, revoked or expired. */
            401: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description forbidden: your role or your token does not include this, or the record is another keeper’s. */
            403: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description not-found: there is no such record. */
            404: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description invalid: a field cannot be taken; each is named in `errors`. */
            422: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description too-many: more was asked than is allowed in so short a time; Retry-After says in how many seconds to try again. */
            429: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
        };
    };
    getSpreadInbreedingSpread: {
        parameters: {
            query?: {
                /** @description How many assignments of parents are drawn, where there are too many to go through all; 2000 if left out. */
                samples?: number;
                /** @description Seed of the drawing: the same seed and revision of the register give the same answer, to the last bit; 1 if left out. */
                seed?: number;
            };
            header?: never;
            path: {
                /** @description Id or registry number of the animal. */
                id: string;
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["InbreedingSpreadView"];
                    "text/event-stream": components["schemas"]["InbreedingSpreadView"];
                };
            };
            /** @description sign-in: only a member may do this, or the token is unknown, revoked or expired. */
            401: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description forbidden: your role or your token does not include this, or the record is another keeper’s. */
            403: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description not-found: there is no such record. */
            404: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description invalid: a field cannot be taken; each is named in `errors`. */
            422: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description too-many: more was asked than is allowed in so short a time; Retry-After says in how many seconds to try again. */
            429: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description unavailable or busy: the service cannot answer now; Retry-After says in how many seconds to try again. */
            503: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
        };
    };
    askWhatIfWhatIf: {
        parameters: {
            query?: never;
            header?: never;
            path: {
                /** @description Id or registry number of the animal. */
                id: string;
            };
            cookie?: never;
        };
        requestBody: {
            content: {
                "application/json": components["schemas"]["WhatIfRequest"];
            };
        };
        responses: {
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["WhatIfView"];
                };
            };
            /** @description malformed: the request cannot be read as JSON. */
            400: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description sign-in: only a member may do this, or the token is unknown, revoked or expired. */
            401: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description forbidden: your role or your token does not include this, or the record is another keeper’s. */
            403: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description not-found: there is no such record. */
            404: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description conflict or loop: a rule of the register stands against it as things are now; the records in the way are named. */
            409: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description invalid: a field cannot be taken; each is named in `errors`. */
            422: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description too-many: more was asked than is allowed in so short a time; Retry-After says in how many seconds to try again. */
            429: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description unavailable or busy: the service cannot answer now; Retry-After says in how many seconds to try again. */
            503: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
        };
    };
    findKinshipLineage: {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        requestBody: {
            content: {
                "application/json": components["schemas"]["KinshipRequest"];
            };
        };
        responses: {
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["KinshipView"];
                };
            };
            /** @description malformed: the request cannot be read as JSON. */
            400: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description sign-in: only a member may do this, or the token is unknown, revoked or expired. */
            401: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description forbidden: your role or your token does not include this, or the record is another keeper’s. */
            403: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description invalid: a field cannot be taken; each is named in `errors`. */
            422: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description too-many: more was asked than is allowed in so short a time; Retry-After says in how many seconds to try again. */
            429: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
        };
    };
    forecastLineage: {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        requestBody: {
            content: {
                "application/json": components["schemas"]["ForecastRequest"];
            };
        };
        responses: {
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["ForecastView"];
                };
            };
            /** @description malformed: the request cannot be read as JSON. */
            400: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description sign-in: only a member may do this, or the token is unknown, revoked or expired. */
            401: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description forbidden: your role or your token does not include this, or the record is another keeper’s. */
            403: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description invalid: a field cannot be taken; each is named in `errors`. */
            422: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description too-many: more was asked than is allowed in so short a time; Retry-After says in how many seconds to try again. */
            429: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
        };
    };
    listFiguresLineage: {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        requestBody: {
            content: {
                "application/json": components["schemas"]["FiguresRequest"];
            };
        };
        responses: {
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["FiguresView"];
                };
            };
            /** @description malformed: the request cannot be read as JSON. */
            400: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description sign-in: only a member may do this, or the token is unknown, revoked or expired. */
            401: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description forbidden: your role or your token does not include this, or the record is another keeper’s. */
            403: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description invalid: a field cannot be taken; each is named in `errors`. */
            422: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description too-many: more was asked than is allowed in so short a time; Retry-After says in how many seconds to try again. */
            429: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
        };
    };
    measureSetLineageSet: {
        parameters: {
            query?: {
                /** @description Exactly this code; case does not matter. */
                code?: string;
                /** @description Exactly this registry number. */
                number?: string;
                /** @description Line: its id or its whole name. */
                line?: string;
                /** @description Line: its id. */
                lineId?: string;
                /** @description Species: its id, scientific or common name. */
                species?: string;
                /** @description Keeper: id or whole name. */
                keeper?: string;
                /** @description Animals from this source. */
                sourceId?: string;
                /** @description Sex. */
                sex?: "male" | "female" | "unsexed";
                /** @description Status. */
                status?: "alive" | "died" | "gone" | "unknown";
                /** @description Visibility. */
                visibility?: "private" | "club" | "public";
                /** @description Words, each of which begins the number or stands in the code, line, species or keeper; one or two characters in the code only where it or a part of it begins. */
                q?: string;
                /** @description Hatched, or perhaps hatched, in this year or later. */
                hatchedFrom?: number;
                /** @description Hatched, or perhaps hatched, in this year or before. */
                hatchedTo?: number;
                /** @description Inbreeding coefficient at least this, 0 to 1. */
                inbreedingFrom?: number;
                /** @description Inbreeding coefficient at most this, 0 to 1. */
                inbreedingTo?: number;
                /** @description Pedigree depth at least this many generations. */
                depthFrom?: number;
                /** @description Pedigree depth at most this many generations. */
                depthTo?: number;
                /** @description Mean kinship with the living animals of its line at least this, 0 to 1. */
                meanKinshipFrom?: number;
                /** @description Mean kinship with the living animals of its line at most this, 0 to 1. */
                meanKinshipTo?: number;
                /** @description Share of the genome traced to founders with papers at least this, 0 to 1. */
                tracedShareFrom?: number;
                /** @description Share of the genome traced to founders with papers at most this, 0 to 1. */
                tracedShareTo?: number;
            };
            header?: never;
            path?: never;
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["LineageSetView"];
                };
            };
            /** @description sign-in: only a member may do this, or the token is unknown, revoked or expired. */
            401: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description forbidden: your role or your token does not include this, or the record is another keeper’s. */
            403: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description invalid: a field cannot be taken; each is named in `errors`. */
            422: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description too-many: more was asked than is allowed in so short a time; Retry-After says in how many seconds to try again. */
            429: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description unavailable or busy: the service cannot answer now; Retry-After says in how many seconds to try again. */
            503: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
        };
    };
    measurePickedLineageSet: {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        requestBody: {
            content: {
                "application/json": components["schemas"]["LineageSetRequest"];
            };
        };
        responses: {
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["LineageSetView"];
                };
            };
            /** @description malformed: the request cannot be read as JSON. */
            400: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description sign-in: only a member may do this, or the token is unknown, revoked or expired. */
            401: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description forbidden: your role or your token does not include this, or the record is another keeper’s. */
            403: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description invalid: a field cannot be taken; each is named in `errors`. */
            422: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description too-many: more was asked than is allowed in so short a time; Retry-After says in how many seconds to try again. */
            429: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description unavailable or busy: the service cannot answer now; Retry-After says in how many seconds to try again. */
            503: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
        };
    };
    getAuditLineAudit: {
        parameters: {
            query?: never;
            header?: never;
            path: {
                id: string;
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["LineAuditView"];
                };
            };
            /** @description sign-in: only a member may do this, or the token is unknown, revoked or expired. */
            401: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description forbidden: your role or your token does not include this, or the record is another keeper’s. */
            403: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description not-found: there is no such record. */
            404: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description too-many: more was asked than is allowed in so short a time; Retry-After says in how many seconds to try again. */
            429: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description unavailable or busy: the service cannot answer now; Retry-After says in how many seconds to try again. */
            503: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
        };
    };
    getTableLineAudit: {
        parameters: {
            query?: never;
            header?: never;
            path: {
                id: string;
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            /** @description The members. */
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "text/csv": string;
                };
            };
            /** @description sign-in: only a member may do this, or the token is unknown, revoked or expired. */
            401: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description forbidden: your role or your token does not include this, or the record is another keeper’s. */
            403: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description not-found: there is no such record. */
            404: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description too-many: more was asked than is allowed in so short a time; Retry-After says in how many seconds to try again. */
            429: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description unavailable or busy: the service cannot answer now; Retry-After says in how many seconds to try again. */
            503: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
        };
    };
    getPaperLineAudit: {
        parameters: {
            query?: {
                /** @description Paper that it is written for; left out, A4. */
                paper?: "a4" | "letter";
            };
            header?: never;
            path: {
                id: string;
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            /** @description The document. */
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/pdf": string;
                };
            };
            /** @description sign-in: only a member may do this, or the token is unknown, revoked or expired. */
            401: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description forbidden: your role or your token does not include this, or the record is another keeper’s. */
            403: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description not-found: there is no such record. */
            404: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description invalid: a field cannot be taken; each is named in `errors`. */
            422: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description too-many: more was asked than is allowed in so short a time; Retry-After says in how many seconds to try again. */
            429: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description unavailable or busy: the service cannot answer now; Retry-After says in how many seconds to try again. */
            503: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
        };
    };
    getOverTimeLineOverTime: {
        parameters: {
            query?: {
                /** @description Members hatched, or perhaps hatched, in this year or later; those without a date are then left out. */
                hatchedFrom?: number;
                /** @description Members hatched, or perhaps hatched, in this year or before; those without a date are then left out. */
                hatchedTo?: number;
            };
            header?: never;
            path: {
                id: string;
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["LineOverTimeView"];
                };
            };
            /** @description sign-in: only a member may do this, or the token is unknown, revoked or expired. */
            401: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description forbidden: your role or your token does not include this, or the record is another keeper’s. */
            403: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description not-found: there is no such record. */
            404: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description invalid: a field cannot be taken; each is named in `errors`. */
            422: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description too-many: more was asked than is allowed in so short a time; Retry-After says in how many seconds to try again. */
            429: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
        };
    };
    getSourceLivingSourceLiving: {
        parameters: {
            query?: never;
            header?: never;
            path: {
                id: string;
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["SourceLivingView"];
                };
            };
            /** @description sign-in: only a member may do this, or the token is unknown, revoked or expired. */
            401: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description forbidden: your role or your token does not include this, or the record is another keeper’s. */
            403: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description not-found: there is no such record. */
            404: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description too-many: more was asked than is allowed in so short a time; Retry-After says in how many seconds to try again. */
            429: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
        };
    };
    tellProgressFiguresProgress: {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["FiguresProgressView"];
                    "text/event-stream": components["schemas"]["FiguresProgressView"];
                };
            };
            /** @description sign-in: only a member may do this, or the token is unknown, revoked or expired. */
            401: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description forbidden: your role or your token does not include this, or the record is another keeper’s. */
            403: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description too-many: more was asked than is allowed in so short a time; Retry-After says in how many seconds to try again. */
            429: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
        };
    };
    listAtRisk: {
        parameters: {
            query?: {
                /** @description How many items at most; 50 if left out. */
                limit?: number;
                /** @description Go on after this point: the `next` of the page before. */
                after?: string;
                /** @description Also count all items that match. */
                total?: boolean;
                /** @description Only this line, and the sources and founders of its animals as far as they live on in it; the whole club if left out. */
                lineId?: string;
                /** @description How many living animals that may breed are few: 1 if left out. */
                mostCarriers?: number;
            };
            header?: never;
            path?: never;
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["AtRiskListView"];
                };
            };
            /** @description sign-in: only a member may do this, or the token is unknown, revoked or expired. */
            401: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description forbidden: your role or your token does not include this, or the record is another keeper’s. */
            403: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description invalid: a field cannot be taken; each is named in `errors`. */
            422: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description too-many: more was asked than is allowed in so short a time; Retry-After says in how many seconds to try again. */
            429: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description unavailable or busy: the service cannot answer now; Retry-After says in how many seconds to try again. */
            503: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
        };
    };
    measureExchangeExchange: {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        requestBody: {
            content: {
                "application/json": components["schemas"]["ExchangeRequest"];
            };
        };
        responses: {
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["ExchangeView"];
                };
            };
            /** @description malformed: the request cannot be read as JSON. */
            400: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description sign-in: only a member may do this, or the token is unknown, revoked or expired. */
            401: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description forbidden: your role or your token does not include this, or the record is another keeper’s. */
            403: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description invalid: a field cannot be taken; each is named in `errors`. */
            422: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description too-many: more was asked than is allowed in so short a time; Retry-After says in how many seconds to try again. */
            429: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description unavailable or busy: the service cannot answer now; Retry-After says in how many seconds to try again. */
            503: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
        };
    };
    lookGroups: {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        requestBody: {
            content: {
                "application/json": components["schemas"]["GroupRequest"];
            };
        };
        responses: {
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["GroupView"];
                };
            };
            /** @description malformed: the request cannot be read as JSON. */
            400: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description sign-in: only a member may do this, or the token is unknown, revoked or expired. */
            401: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description forbidden: your role or your token does not include this, or the record is another keeper’s. */
            403: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description invalid: a field cannot be taken; each is named in `errors`. */
            422: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description too-many: more was asked than is allowed in so short a time; Retry-After says in how many seconds to try again. */
            429: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description unavailable or busy: the service cannot answer now; Retry-After says in how many seconds to try again. */
            503: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
        };
    };
    listKeptPlansKeptPlans: {
        parameters: {
            query?: {
                /** @description How many items at most; 50 if left out. */
                limit?: number;
                /** @description Go on after this point: the `next` of the page before. */
                after?: string;
                /** @description Also count all items that match. */
                total?: boolean;
                /** @description Those for this line. */
                lineId?: string;
                /** @description Those that this keeper made. */
                keeperId?: string;
            };
            header?: never;
            path?: never;
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            /** @description One page of the list. */
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": {
                        items: components["schemas"]["KeptPlanItemView"][];
                        /** @description Send it as `after` to go on; null at the end. */
                        next: string | null;
                        /** @description How many match in all; only with `total=true`. */
                        total?: number;
                    };
                };
            };
            /** @description sign-in: only a member may do this, or the token is unknown, revoked or expired. */
            401: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description forbidden: your role or your token does not include this, or the record is another keeper’s. */
            403: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description invalid: a field cannot be taken; each is named in `errors`. */
            422: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description too-many: more was asked than is allowed in so short a time; Retry-After says in how many seconds to try again. */
            429: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
        };
    };
    addKeptPlanKeptPlans: {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        requestBody: {
            content: {
                "application/json": components["schemas"]["NewKeptPlanRequest"];
            };
        };
        responses: {
            201: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["KeptPlanView"];
                };
            };
            /** @description malformed: the request cannot be read as JSON. */
            400: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description sign-in: only a member may do this, or the token is unknown, revoked or expired. */
            401: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description forbidden: your role or your token does not include this, or the record is another keeper’s. */
            403: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description not-found: there is no such record. */
            404: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description conflict or loop: a rule of the register stands against it as things are now; the records in the way are named. */
            409: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description invalid: a field cannot be taken; each is named in `errors`. */
            422: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description too-many: more was asked than is allowed in so short a time; Retry-After says in how many seconds to try again. */
            429: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description unavailable or busy: the service cannot answer now; Retry-After says in how many seconds to try again. */
            503: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
        };
    };
    getKeptPlanKeptPlans: {
        parameters: {
            query?: never;
            header?: never;
            path: {
                id: string;
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["KeptPlanView"];
                };
            };
            /** @description sign-in: only a member may do this, or the token is unknown, revoked or expired. */
            401: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description forbidden: your role or your token does not include this, or the record is another keeper’s. */
            403: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description not-found: there is no such record. */
            404: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description too-many: more was asked than is allowed in so short a time; Retry-After says in how many seconds to try again. */
            429: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
        };
    };
    changeKeptPlanKeptPlans: {
        parameters: {
            query?: never;
            header: {
                /** @description ETag of the record as it was read, such as "3"; a list of them; or * for whatever is there. */
                "If-Match": string;
            };
            path: {
                id: string;
            };
            cookie?: never;
        };
        requestBody: {
            content: {
                "application/json": components["schemas"]["KeptPlanChangeRequest"];
            };
        };
        responses: {
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["KeptPlanView"];
                };
            };
            /** @description malformed: the request cannot be read as JSON. */
            400: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description sign-in: only a member may do this, or the token is unknown, revoked or expired. */
            401: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description forbidden: your role or your token does not include this, or the record is another keeper’s. */
            403: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description not-found: there is no such record. */
            404: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description conflict or loop: a rule of the register stands against it as things are now; the records in the way are named. */
            409: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description stale: somebody changed the record meanwhile; `current` is the record as it is now. */
            412: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description invalid: a field cannot be taken; each is named in `errors`. */
            422: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description precondition-required: the If-Match header is missing. */
            428: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description too-many: more was asked than is allowed in so short a time; Retry-After says in how many seconds to try again. */
            429: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
        };
    };
    acceptPairsKeptPlans: {
        parameters: {
            query?: never;
            header: {
                /** @description ETag of the record as it was read, such as "3"; a list of them; or * for whatever is there. */
                "If-Match": string;
            };
            path: {
                id: string;
            };
            cookie?: never;
        };
        requestBody: {
            content: {
                "application/json": components["schemas"]["AcceptPairsRequest"];
            };
        };
        responses: {
            201: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["KeptPlanView"];
                };
            };
            /** @description malformed: the request cannot be read as JSON. */
            400: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description sign-in: only a member may do this, or the token is unknown, revoked or expired. */
            401: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description forbidden: your role or your token does not include this, or the record is another keeper’s. */
            403: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description not-found: there is no such record. */
            404: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description conflict or loop: a rule of the register stands against it as things are now; the records in the way are named. */
            409: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description stale: somebody changed the record meanwhile; `current` is the record as it is now. */
            412: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description invalid: a field cannot be taken; each is named in `errors`. */
            422: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description precondition-required: the If-Match header is missing. */
            428: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description too-many: more was asked than is allowed in so short a time; Retry-After says in how many seconds to try again. */
            429: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
        };
    };
    decidePairsKeptPlans: {
        parameters: {
            query?: never;
            header: {
                /** @description ETag of the record as it was read, such as "3"; a list of them; or * for whatever is there. */
                "If-Match": string;
            };
            path: {
                id: string;
            };
            cookie?: never;
        };
        requestBody: {
            content: {
                "application/json": components["schemas"]["DecidePairsRequest"];
            };
        };
        responses: {
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["KeptPlanView"];
                };
            };
            /** @description malformed: the request cannot be read as JSON. */
            400: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description sign-in: only a member may do this, or the token is unknown, revoked or expired. */
            401: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description forbidden: your role or your token does not include this, or the record is another keeper’s. */
            403: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description not-found: there is no such record. */
            404: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description conflict or loop: a rule of the register stands against it as things are now; the records in the way are named. */
            409: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description stale: somebody changed the record meanwhile; `current` is the record as it is now. */
            412: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description invalid: a field cannot be taken; each is named in `errors`. */
            422: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description precondition-required: the If-Match header is missing. */
            428: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description too-many: more was asked than is allowed in so short a time; Retry-After says in how many seconds to try again. */
            429: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
        };
    };
    withdrawKeptPlanKeptPlans: {
        parameters: {
            query?: never;
            header: {
                /** @description ETag of the record as it was read, such as "3"; a list of them; or * for whatever is there. */
                "If-Match": string;
            };
            path: {
                id: string;
            };
            cookie?: never;
        };
        requestBody: {
            content: {
                "application/json": components["schemas"]["WithdrawalRequest"];
            };
        };
        responses: {
            201: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["KeptPlanItemView"];
                };
            };
            /** @description malformed: the request cannot be read as JSON. */
            400: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description sign-in: only a member may do this, or the token is unknown, revoked or expired. */
            401: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description forbidden: your role or your token does not include this, or the record is another keeper’s. */
            403: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description not-found: there is no such record. */
            404: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description conflict or loop: a rule of the register stands against it as things are now; the records in the way are named. */
            409: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description stale: somebody changed the record meanwhile; `current` is the record as it is now. */
            412: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description invalid: a field cannot be taken; each is named in `errors`. */
            422: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description precondition-required: the If-Match header is missing. */
            428: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description too-many: more was asked than is allowed in so short a time; Retry-After says in how many seconds to try again. */
            429: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
        };
    };
    restoreKeptPlanKeptPlans: {
        parameters: {
            query?: never;
            header: {
                /** @description ETag of the record as it was read, such as "3"; a list of them; or * for whatever is there. */
                "If-Match": string;
            };
            path: {
                id: string;
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["KeptPlanItemView"];
                };
            };
            /** @description sign-in: only a member may do this, or the token is unknown, revoked or expired. */
            401: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description forbidden: your role or your token does not include this, or the record is another keeper’s. */
            403: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description not-found: there is no such record. */
            404: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description conflict or loop: a rule of the register stands against it as things are now; the records in the way are named. */
            409: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description stale: somebody changed the record meanwhile; `current` is the record as it is now. */
            412: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description precondition-required: the If-Match header is missing. */
            428: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description too-many: more was asked than is allowed in so short a time; Retry-After says in how many seconds to try again. */
            429: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
        };
    };
    listMates: {
        parameters: {
            query?: {
                /** @description How many items at most; 50 if left out. */
                limit?: number;
                /** @description Go on after this point: the `next` of the page before. */
                after?: string;
                /** @description Also count all items that match. */
                total?: boolean;
                /** @description Order: `kinship`, the least related first, if left out; `diversity`, first those whose young would add most to the gene diversity of the line. In both, animals of which neither a source nor a parent is recorded come last. */
                sort?: "kinship" | "diversity";
                /** @description Greatest kinship with the animal, which is F of the young, 0 to 1; 0.125 if left out, that of half-sibs. Those above it are told as excluded. */
                kinshipTo?: number;
                /** @description Only mates of this line; if it is not the line of the animal, the young would be a cross. */
                lineId?: string;
                /** @description Also mates of other lines and of none: the young would be a cross, and each says so. */
                crossLines?: boolean;
                /** @description Only mates of this keeper. */
                keeperId?: string;
                /** @description Only mates that have bred, or only those that have not: a clutch that is certainly theirs hatched. */
                proven?: boolean;
                /** @description Only mates that are certainly this old, in months of 30.4375 days. */
                monthsFrom?: number;
                /** @description Also animals that were not sexed yet. */
                unsexed?: boolean;
                /** @description Also animals whose label is disputed; each says so. */
                disputed?: boolean;
            };
            header?: never;
            path: {
                /** @description Id or registry number of the animal. */
                id: string;
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["MatesView"];
                };
            };
            /** @description sign-in: only a member may do this, or the token is unknown, revoked or expired. */
            401: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description forbidden: your role or your token does not include this, or the record is another keeper’s. */
            403: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description not-found: there is no such record. */
            404: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description invalid: a field cannot be taken; each is named in `errors`. */
            422: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description too-many: more was asked than is allowed in so short a time; Retry-After says in how many seconds to try again. */
            429: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description unavailable or busy: the service cannot answer now; Retry-After says in how many seconds to try again. */
            503: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
        };
    };
    listNewBlood: {
        parameters: {
            query?: {
                /** @description How many items at most; 50 if left out. */
                limit?: number;
                /** @description Go on after this point: the `next` of the page before. */
                after?: string;
                /** @description Also count all items that match. */
                total?: boolean;
                /** @description Who gets it: `keeper`, if left out, what one keeper has of the line, as far as whoever asks may see it; `line`, the whole line. */
                of?: "keeper" | "line";
                /** @description The keeper; whoever asks if left out. Counts only with `of=keeper`. */
                keeperId?: string;
                /** @description Order: `animal`, first those that add most to the gene diversity of the holding themselves; `young`, first those of whom one young with the best partner there adds most; `lacking`, first those with the greatest share from founders of which the holding has nothing. If left out `animal` for a keeper, `young` for a line. In each, animals of which neither a source nor a parent is recorded come last. */
                sort?: "animal" | "young" | "lacking";
                /** @description Greatest kinship of an animal and its partner, which is F of their young, 0 to 1; 0.125 if left out. */
                kinshipTo?: number;
                /** @description Also animals of other lines and of none: their young would be crosses, and each says so. */
                crossLines?: boolean;
                /** @description Also animals that were not sexed yet. */
                unsexed?: boolean;
                /** @description Also animals whose label is disputed; each says so. */
                disputed?: boolean;
            };
            header?: never;
            path: {
                id: string;
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["NewBloodView"];
                };
            };
            /** @description sign-in: only a member may do this, or the token is unknown, revoked or expired. */
            401: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description forbidden: your role or your token does not include this, or the record is another keeper’s. */
            403: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description not-found: there is no such record. */
            404: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description invalid: a field cannot be taken; each is named in `errors`. */
            422: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description too-many: more was asked than is allowed in so short a time; Retry-After says in how many seconds to try again. */
            429: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description unavailable or busy: the service cannot answer now; Retry-After says in how many seconds to try again. */
            503: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
        };
    };
    makePlanPlan: {
        parameters: {
            query?: never;
            header?: never;
            path: {
                id: string;
            };
            cookie?: never;
        };
        requestBody: {
            content: {
                "application/json": components["schemas"]["PlanRequest"];
            };
        };
        responses: {
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["PlanView"];
                };
            };
            /** @description malformed: the request cannot be read as JSON. */
            400: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description sign-in: only a member may do this, or the token is unknown, revoked or expired. */
            401: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description forbidden: your role or your token does not include this, or the record is another keeper’s. */
            403: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description not-found: there is no such record. */
            404: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description invalid: a field cannot be taken; each is named in `errors`. */
            422: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description too-many: more was asked than is allowed in so short a time; Retry-After says in how many seconds to try again. */
            429: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description unavailable or busy: the service cannot answer now; Retry-After says in how many seconds to try again. */
            503: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
        };
    };
    askForecastPlanForecast: {
        parameters: {
            query?: never;
            header?: never;
            path: {
                /** @description Id of the line. */
                id: string;
            };
            cookie?: never;
        };
        requestBody: {
            content: {
                "application/json": components["schemas"]["PlanForecastRequest"];
            };
        };
        responses: {
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["PlanForecastView"];
                    "text/event-stream": components["schemas"]["PlanForecastView"];
                };
            };
            /** @description malformed: the request cannot be read as JSON. */
            400: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description sign-in: only a member may do this, or the token is unknown, revoked or expired. */
            401: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description forbidden: your role or your token does not include this, or the record is another keeper’s. */
            403: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description not-found: there is no such record. */
            404: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description conflict or loop: a rule of the register stands against it as things are now; the records in the way are named. */
            409: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description invalid: a field cannot be taken; each is named in `errors`. */
            422: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description too-many: more was asked than is allowed in so short a time; Retry-After says in how many seconds to try again. */
            429: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description unavailable or busy: the service cannot answer now; Retry-After says in how many seconds to try again. */
            503: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
        };
    };
    listSigningKeysSigningKeys: {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["SigningKeysView"];
                };
            };
            /** @description sign-in: only a member may do this, or the token is unknown, revoked or expired. */
            401: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description forbidden: your role or your token does not include this, or the record is another keeper’s. */
            403: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description too-many: more was asked than is allowed in so short a time; Retry-After says in how many seconds to try again. */
            429: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
        };
    };
    renewSigningKeySigningKeys: {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        requestBody: {
            content: {
                "application/json": components["schemas"]["KeyRetirementRequest"];
            };
        };
        responses: {
            201: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["SigningKeyView"];
                };
            };
            /** @description malformed: the request cannot be read as JSON. */
            400: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description sign-in: only a member may do this, or the token is unknown, revoked or expired. */
            401: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description forbidden: your role or your token does not include this, or the record is another keeper’s. */
            403: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description conflict or loop: a rule of the register stands against it as things are now; the records in the way are named. */
            409: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description invalid: a field cannot be taken; each is named in `errors`. */
            422: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description too-many: more was asked than is allowed in so short a time; Retry-After says in how many seconds to try again. */
            429: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description unavailable or busy: the service cannot answer now; Retry-After says in how many seconds to try again. */
            503: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
        };
    };
    retireSigningKeySigningKeys: {
        parameters: {
            query?: never;
            header?: never;
            path: {
                /** @description Thumbprint of the key. */
                kid: string;
            };
            cookie?: never;
        };
        requestBody: {
            content: {
                "application/json": components["schemas"]["KeyRetirementRequest"];
            };
        };
        responses: {
            201: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["SigningKeyView"];
                };
            };
            /** @description malformed: the request cannot be read as JSON. */
            400: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description sign-in: only a member may do this, or the token is unknown, revoked or expired. */
            401: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description forbidden: your role or your token does not include this, or the record is another keeper’s. */
            403: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description not-found: there is no such record. */
            404: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description conflict or loop: a rule of the register stands against it as things are now; the records in the way are named. */
            409: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description invalid: a field cannot be taken; each is named in `errors`. */
            422: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description too-many: more was asked than is allowed in so short a time; Retry-After says in how many seconds to try again. */
            429: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
        };
    };
    getPublishedKeysPublishedKeys: {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["PublishedKeysView"];
                };
            };
        };
    };
    listSheetsSheets: {
        parameters: {
            query?: {
                /** @description How many items at most; 50 if left out. */
                limit?: number;
                /** @description Go on after this point: the `next` of the page before. */
                after?: string;
                /** @description Also count all items that match. */
                total?: boolean;
                /** @description Those that this animal stands on. */
                individualId?: string;
            };
            header?: never;
            path?: never;
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            /** @description One page of the list. */
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": {
                        items: components["schemas"]["SheetView"][];
                        /** @description Send it as `after` to go on; null at the end. */
                        next: string | null;
                        /** @description How many match in all; only with `total=true`. */
                        total?: number;
                    };
                };
            };
            /** @description sign-in: only a member may do this, or the token is unknown, revoked or expired. */
            401: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description forbidden: your role or your token does not include this, or the record is another keeper’s. */
            403: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description invalid: a field cannot be taken; each is named in `errors`. */
            422: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description too-many: more was asked than is allowed in so short a time; Retry-After says in how many seconds to try again. */
            429: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
        };
    };
    makeSheetSheets: {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        requestBody: {
            content: {
                "application/json": components["schemas"]["NewSheetRequest"];
            };
        };
        responses: {
            201: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["SheetView"];
                };
            };
            /** @description malformed: the request cannot be read as JSON. */
            400: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description sign-in: only a member may do this, or the token is unknown, revoked or expired. */
            401: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description forbidden: your role or your token does not include this, or the record is another keeper’s. */
            403: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description conflict or loop: a rule of the register stands against it as things are now; the records in the way are named. */
            409: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description invalid: a field cannot be taken; each is named in `errors`. */
            422: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description too-many: more was asked than is allowed in so short a time; Retry-After says in how many seconds to try again. */
            429: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description unavailable or busy: the service cannot answer now; Retry-After says in how many seconds to try again. */
            503: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
        };
    };
    getSheetSheets: {
        parameters: {
            query?: never;
            header?: never;
            path: {
                id: string;
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["SheetView"];
                };
            };
            /** @description sign-in: only a member may do this, or the token is unknown, revoked or expired. */
            401: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description forbidden: your role or your token does not include this, or the record is another keeper’s. */
            403: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description not-found: there is no such record. */
            404: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description too-many: more was asked than is allowed in so short a time; Retry-After says in how many seconds to try again. */
            429: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
        };
    };
    getSheetFileSheets: {
        parameters: {
            query?: never;
            header?: never;
            path: {
                id: string;
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            /** @description The file. */
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/jose+json": Record<string, never>;
                };
            };
            /** @description sign-in: only a member may do this, or the token is unknown, revoked or expired. */
            401: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description forbidden: your role or your token does not include this, or the record is another keeper’s. */
            403: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description not-found: there is no such record. */
            404: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description too-many: more was asked than is allowed in so short a time; Retry-After says in how many seconds to try again. */
            429: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
        };
    };
    getSheetPaperSheets: {
        parameters: {
            query?: never;
            header?: never;
            path: {
                id: string;
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            /** @description The document. */
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/pdf": string;
                };
            };
            /** @description sign-in: only a member may do this, or the token is unknown, revoked or expired. */
            401: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description forbidden: your role or your token does not include this, or the record is another keeper’s. */
            403: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description not-found: there is no such record. */
            404: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description too-many: more was asked than is allowed in so short a time; Retry-After says in how many seconds to try again. */
            429: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description unavailable or busy: the service cannot answer now; Retry-After says in how many seconds to try again. */
            503: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
        };
    };
    revokeSheetSheets: {
        parameters: {
            query?: never;
            header: {
                /** @description ETag of the record as it was read, such as "3"; a list of them; or * for whatever is there. */
                "If-Match": string;
            };
            path: {
                id: string;
            };
            cookie?: never;
        };
        requestBody: {
            content: {
                "application/json": components["schemas"]["SheetRevocationRequest"];
            };
        };
        responses: {
            201: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["SheetView"];
                };
            };
            /** @description malformed: the request cannot be read as JSON. */
            400: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description sign-in: only a member may do this, or the token is unknown, revoked or expired. */
            401: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description forbidden: your role or your token does not include this, or the record is another keeper’s. */
            403: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description not-found: there is no such record. */
            404: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description conflict or loop: a rule of the register stands against it as things are now; the records in the way are named. */
            409: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description stale: somebody changed the record meanwhile; `current` is the record as it is now. */
            412: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description invalid: a field cannot be taken; each is named in `errors`. */
            422: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description precondition-required: the If-Match header is missing. */
            428: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description too-many: more was asked than is allowed in so short a time; Retry-After says in how many seconds to try again. */
            429: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
        };
    };
    verifySheetFilePublicSheets: {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /** @description The file. */
        requestBody: {
            content: {
                "application/jose+json": string;
                "application/octet-stream": string;
            };
        };
        responses: {
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["SheetVerificationView"];
                };
            };
            /** @description sign-in: only a member may do this, or the token is unknown, revoked or expired. */
            401: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description forbidden: your role or your token does not include this, or the record is another keeper’s. */
            403: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description too-large: the request is larger than this address takes. */
            413: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description unsupported-media-type: the body is of a type that is not read here. */
            415: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description invalid: a field cannot be taken; each is named in `errors`. */
            422: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description too-many: more was asked than is allowed in so short a time; Retry-After says in how many seconds to try again. */
            429: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
        };
    };
    getPublicSheetPublicSheets: {
        parameters: {
            query?: never;
            header?: never;
            path: {
                /** @description What stands at the end of the address that the QR code leads to. */
                token: string;
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["PublicSheetView"];
                };
            };
            /** @description sign-in: only a member may do this, or the token is unknown, revoked or expired. */
            401: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description forbidden: your role or your token does not include this, or the record is another keeper’s. */
            403: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description not-found: there is no such record. */
            404: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description too-many: more was asked than is allowed in so short a time; Retry-After says in how many seconds to try again. */
            429: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
        };
    };
    getPublicSheetFilePublicSheets: {
        parameters: {
            query?: never;
            header?: never;
            path: {
                /** @description What stands at the end of the address that the QR code leads to. */
                token: string;
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            /** @description The file. */
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/jose+json": Record<string, never>;
                };
            };
            /** @description sign-in: only a member may do this, or the token is unknown, revoked or expired. */
            401: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description forbidden: your role or your token does not include this, or the record is another keeper’s. */
            403: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description not-found: there is no such record. */
            404: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description gone: it was there once and is not given again. */
            410: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description too-many: more was asked than is allowed in so short a time; Retry-After says in how many seconds to try again. */
            429: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
        };
    };
    getPublicSheetPaperPublicSheets: {
        parameters: {
            query?: never;
            header?: never;
            path: {
                /** @description What stands at the end of the address that the QR code leads to. */
                token: string;
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            /** @description The document. */
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/pdf": string;
                };
            };
            /** @description sign-in: only a member may do this, or the token is unknown, revoked or expired. */
            401: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description forbidden: your role or your token does not include this, or the record is another keeper’s. */
            403: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description not-found: there is no such record. */
            404: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description gone: it was there once and is not given again. */
            410: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description too-many: more was asked than is allowed in so short a time; Retry-After says in how many seconds to try again. */
            429: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description unavailable or busy: the service cannot answer now; Retry-After says in how many seconds to try again. */
            503: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
        };
    };
    getPublicPhotographPublicSheets: {
        parameters: {
            query?: {
                /** @description small: at most 480 pixels; whole if left out. */
                size?: "whole" | "small";
            };
            header?: never;
            path: {
                /** @description What stands at the end of the address that the QR code leads to. */
                token: string;
                /** @description SHA-256 of the picture as the sheet has it, hexadecimal. */
                sha256: string;
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            /** @description The picture. */
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "image/jpeg": string;
                };
            };
            /** @description sign-in: only a member may do this, or the token is unknown, revoked or expired. */
            401: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description forbidden: your role or your token does not include this, or the record is another keeper’s. */
            403: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description not-found: there is no such record. */
            404: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description invalid: a field cannot be taken; each is named in `errors`. */
            422: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description too-many: more was asked than is allowed in so short a time; Retry-After says in how many seconds to try again. */
            429: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description unavailable or busy: the service cannot answer now; Retry-After says in how many seconds to try again. */
            503: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
        };
    };
    listTransfersTransfers: {
        parameters: {
            query?: {
                /** @description How many items at most; 50 if left out. */
                limit?: number;
                /** @description Go on after this point: the `next` of the page before. */
                after?: string;
                /** @description Also count all items that match. */
                total?: boolean;
                /** @description Those that I gave, departures included, or those that were offered to me. All that may be seen if left out. */
                side?: "given" | "received";
                /** @description In this state. */
                state?: "offered" | "accepted" | "declined" | "withdrawn";
                /** @description To keepers of the club, or out of it. */
                kind?: "handover" | "departure";
                /** @description Those of this animal, also under records that were merged into it. */
                individualId?: string;
            };
            header?: never;
            path?: never;
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            /** @description One page of the list. */
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": {
                        items: components["schemas"]["TransferItemView"][];
                        /** @description Send it as `after` to go on; null at the end. */
                        next: string | null;
                        /** @description How many match in all; only with `total=true`. */
                        total?: number;
                    };
                };
            };
            /** @description sign-in: only a member may do this, or the token is unknown, revoked or expired. */
            401: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description forbidden: your role or your token does not include this, or the record is another keeper’s. */
            403: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description invalid: a field cannot be taken; each is named in `errors`. */
            422: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description too-many: more was asked than is allowed in so short a time; Retry-After says in how many seconds to try again. */
            429: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
        };
    };
    addTransferTransfers: {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        requestBody: {
            content: {
                "application/json": components["schemas"]["NewTransferRequest"];
            };
        };
        responses: {
            201: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["TransferView"];
                };
            };
            /** @description malformed: the request cannot be read as JSON. */
            400: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description sign-in: only a member may do this, or the token is unknown, revoked or expired. */
            401: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description forbidden: your role or your token does not include this, or the record is another keeper’s. */
            403: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description conflict or loop: a rule of the register stands against it as things are now; the records in the way are named. */
            409: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description invalid: a field cannot be taken; each is named in `errors`. */
            422: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description too-many: more was asked than is allowed in so short a time; Retry-After says in how many seconds to try again. */
            429: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
        };
    };
    getTransferTransfers: {
        parameters: {
            query?: never;
            header?: never;
            path: {
                id: string;
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["TransferView"];
                };
            };
            /** @description sign-in: only a member may do this, or the token is unknown, revoked or expired. */
            401: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description forbidden: your role or your token does not include this, or the record is another keeper’s. */
            403: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description not-found: there is no such record. */
            404: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description too-many: more was asked than is allowed in so short a time; Retry-After says in how many seconds to try again. */
            429: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
        };
    };
    acceptTransferTransfers: {
        parameters: {
            query?: never;
            header: {
                /** @description ETag of the record as it was read, such as "3"; a list of them; or * for whatever is there. */
                "If-Match": string;
            };
            path: {
                id: string;
            };
            cookie?: never;
        };
        requestBody: {
            content: {
                "application/json": components["schemas"]["AcceptanceRequest"];
            };
        };
        responses: {
            201: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["TransferView"];
                };
            };
            /** @description malformed: the request cannot be read as JSON. */
            400: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description sign-in: only a member may do this, or the token is unknown, revoked or expired. */
            401: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description forbidden: your role or your token does not include this, or the record is another keeper’s. */
            403: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description not-found: there is no such record. */
            404: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description conflict or loop: a rule of the register stands against it as things are now; the records in the way are named. */
            409: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description stale: somebody changed the record meanwhile; `current` is the record as it is now. */
            412: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description invalid: a field cannot be taken; each is named in `errors`. */
            422: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description precondition-required: the If-Match header is missing. */
            428: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description too-many: more was asked than is allowed in so short a time; Retry-After says in how many seconds to try again. */
            429: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
        };
    };
    declineTransferTransfers: {
        parameters: {
            query?: never;
            header: {
                /** @description ETag of the record as it was read, such as "3"; a list of them; or * for whatever is there. */
                "If-Match": string;
            };
            path: {
                id: string;
            };
            cookie?: never;
        };
        requestBody: {
            content: {
                "application/json": components["schemas"]["TransferReasonRequest"];
            };
        };
        responses: {
            201: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["TransferView"];
                };
            };
            /** @description malformed: the request cannot be read as JSON. */
            400: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description sign-in: only a member may do this, or the token is unknown, revoked or expired. */
            401: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description forbidden: your role or your token does not include this, or the record is another keeper’s. */
            403: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description not-found: there is no such record. */
            404: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description conflict or loop: a rule of the register stands against it as things are now; the records in the way are named. */
            409: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description stale: somebody changed the record meanwhile; `current` is the record as it is now. */
            412: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description invalid: a field cannot be taken; each is named in `errors`. */
            422: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description precondition-required: the If-Match header is missing. */
            428: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description too-many: more was asked than is allowed in so short a time; Retry-After says in how many seconds to try again. */
            429: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
        };
    };
    withdrawTransferTransfers: {
        parameters: {
            query?: never;
            header: {
                /** @description ETag of the record as it was read, such as "3"; a list of them; or * for whatever is there. */
                "If-Match": string;
            };
            path: {
                id: string;
            };
            cookie?: never;
        };
        requestBody: {
            content: {
                "application/json": components["schemas"]["TransferReasonRequest"];
            };
        };
        responses: {
            201: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["TransferView"];
                };
            };
            /** @description malformed: the request cannot be read as JSON. */
            400: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description sign-in: only a member may do this, or the token is unknown, revoked or expired. */
            401: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description forbidden: your role or your token does not include this, or the record is another keeper’s. */
            403: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description not-found: there is no such record. */
            404: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description conflict or loop: a rule of the register stands against it as things are now; the records in the way are named. */
            409: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description stale: somebody changed the record meanwhile; `current` is the record as it is now. */
            412: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description invalid: a field cannot be taken; each is named in `errors`. */
            422: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description precondition-required: the If-Match header is missing. */
            428: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description too-many: more was asked than is allowed in so short a time; Retry-After says in how many seconds to try again. */
            429: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
        };
    };
    returnAnimalsTransfers: {
        parameters: {
            query?: never;
            header: {
                /** @description ETag of the record as it was read, such as "3"; a list of them; or * for whatever is there. */
                "If-Match": string;
            };
            path: {
                id: string;
            };
            cookie?: never;
        };
        requestBody: {
            content: {
                "application/json": components["schemas"]["ReturnRequest"];
            };
        };
        responses: {
            201: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["TransferView"];
                };
            };
            /** @description malformed: the request cannot be read as JSON. */
            400: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description sign-in: only a member may do this, or the token is unknown, revoked or expired. */
            401: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description forbidden: your role or your token does not include this, or the record is another keeper’s. */
            403: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description not-found: there is no such record. */
            404: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description conflict or loop: a rule of the register stands against it as things are now; the records in the way are named. */
            409: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description stale: somebody changed the record meanwhile; `current` is the record as it is now. */
            412: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description invalid: a field cannot be taken; each is named in `errors`. */
            422: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description precondition-required: the If-Match header is missing. */
            428: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description too-many: more was asked than is allowed in so short a time; Retry-After says in how many seconds to try again. */
            429: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
        };
    };
    getTodayToday: {
        parameters: {
            query?: {
                /** @description The day by the calendar where the tanks stand, YYYY-MM-DD; today in UTC if left out. */
                on?: string;
                /** @description mine: what whoever asks keeps, if left out; club: what all keepers keep, as far as it may be seen. Offers and reviews are those of whoever asks. */
                of?: "mine" | "club";
                /** @description How many of each kind at most; 30 if left out. Each says how many there are in all. */
                limit?: number;
            };
            header?: never;
            path?: never;
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["TodayView"];
                };
            };
            /** @description sign-in: only a member may do this, or the token is unknown, revoked or expired. */
            401: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description forbidden: your role or your token does not include this, or the record is another keeper’s. */
            403: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description invalid: a field cannot be taken; each is named in `errors`. */
            422: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description too-many: more was asked than is allowed in so short a time; Retry-After says in how many seconds to try again. */
            429: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
        };
    };
    listImportsImports: {
        parameters: {
            query?: {
                /** @description How many items at most; 50 if left out. */
                limit?: number;
                /** @description Go on after this point: the `next` of the page before. */
                after?: string;
                /** @description Also count all items that match. */
                total?: boolean;
            };
            header?: never;
            path?: never;
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            /** @description One page of the list. */
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": {
                        items: components["schemas"]["PastImportView"][];
                        /** @description Send it as `after` to go on; null at the end. */
                        next: string | null;
                        /** @description How many match in all; only with `total=true`. */
                        total?: number;
                    };
                };
            };
            /** @description sign-in: only a member may do this, or the token is unknown, revoked or expired. */
            401: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description forbidden: your role or your token does not include this, or the record is another keeper’s. */
            403: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description invalid: a field cannot be taken; each is named in `errors`. */
            422: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description too-many: more was asked than is allowed in so short a time; Retry-After says in how many seconds to try again. */
            429: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
        };
    };
    importSheetImports: {
        parameters: {
            query?: {
                /** @description Only check the sheet and tell what it would make; store nothing. */
                dryRun?: boolean;
                /** @description Who may see the animals and sources that the sheet makes; club if left out. */
                visibility?: "private" | "club" | "public";
            };
            header?: never;
            path?: never;
            cookie?: never;
        };
        /** @description The sheet itself as text/csv, or a form with the sheet as `file`. */
        requestBody: {
            content: {
                "text/csv": {
                    /**
                     * Format: binary
                     * @description The sheet.
                     */
                    file: string;
                };
                "multipart/form-data": {
                    /**
                     * Format: binary
                     * @description The sheet.
                     */
                    file: string;
                };
            };
        };
        responses: {
            /** @description The sheet was checked and could be taken; nothing was stored. */
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["ImportView"];
                };
            };
            /** @description The sheet was taken. */
            201: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["ImportView"];
                };
            };
            /** @description malformed: the request cannot be read as JSON. */
            400: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description sign-in: only a member may do this, or the token is unknown, revoked or expired. */
            401: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description forbidden: your role or your token does not include this, or the record is another keeper’s. */
            403: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description conflict or loop: a rule of the register stands against it as things are now; the records in the way are named. */
            409: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description too-large: the request is larger than this address takes. */
            413: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description unsupported-media-type: the body is of a type that is not read here. */
            415: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description invalid: a field cannot be taken; each is named in `errors`. */
            422: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description too-many: more was asked than is allowed in so short a time; Retry-After says in how many seconds to try again. */
            429: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description unavailable or busy: the service cannot answer now; Retry-After says in how many seconds to try again. */
            503: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
        };
    };
    getImportImports: {
        parameters: {
            query?: never;
            header?: never;
            path: {
                id: string;
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["WholeImportView"];
                };
            };
            /** @description sign-in: only a member may do this, or the token is unknown, revoked or expired. */
            401: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description forbidden: your role or your token does not include this, or the record is another keeper’s. */
            403: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description not-found: there is no such record. */
            404: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description too-many: more was asked than is allowed in so short a time; Retry-After says in how many seconds to try again. */
            429: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
        };
    };
    undoImportImports: {
        parameters: {
            query?: never;
            header?: never;
            path: {
                id: string;
            };
            cookie?: never;
        };
        requestBody: {
            content: {
                "application/json": components["schemas"]["WithdrawalRequest"];
            };
        };
        responses: {
            201: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["WholeImportView"];
                };
            };
            /** @description malformed: the request cannot be read as JSON. */
            400: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description sign-in: only a member may do this, or the token is unknown, revoked or expired. */
            401: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description forbidden: your role or your token does not include this, or the record is another keeper’s. */
            403: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description not-found: there is no such record. */
            404: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description conflict or loop: a rule of the register stands against it as things are now; the records in the way are named. */
            409: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description invalid: a field cannot be taken; each is named in `errors`. */
            422: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description too-many: more was asked than is allowed in so short a time; Retry-After says in how many seconds to try again. */
            429: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
        };
    };
    restoreImportImports: {
        parameters: {
            query?: never;
            header?: never;
            path: {
                id: string;
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["WholeImportView"];
                };
            };
            /** @description sign-in: only a member may do this, or the token is unknown, revoked or expired. */
            401: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description forbidden: your role or your token does not include this, or the record is another keeper’s. */
            403: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description not-found: there is no such record. */
            404: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description conflict or loop: a rule of the register stands against it as things are now; the records in the way are named. */
            409: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description too-many: more was asked than is allowed in so short a time; Retry-After says in how many seconds to try again. */
            429: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
        };
    };
    getRegisterSheetRegisterSheet: {
        parameters: {
            query?: {
                /** @description Exactly this code; case does not matter. */
                code?: string;
                /** @description Exactly this registry number. */
                number?: string;
                /** @description Line: its id or its whole name. */
                line?: string;
                /** @description Line: its id. */
                lineId?: string;
                /** @description Species: its id, scientific or common name. */
                species?: string;
                /** @description Keeper: id or whole name. */
                keeper?: string;
                /** @description Animals from this source. */
                sourceId?: string;
                /** @description Sex. */
                sex?: "male" | "female" | "unsexed";
                /** @description Status. */
                status?: "alive" | "died" | "gone" | "unknown";
                /** @description Visibility. */
                visibility?: "private" | "club" | "public";
                /** @description Words, each of which begins the number or stands in the code, line, species or keeper; one or two characters in the code only where it or a part of it begins. */
                q?: string;
                /** @description Hatched, or perhaps hatched, in this year or later. */
                hatchedFrom?: number;
                /** @description Hatched, or perhaps hatched, in this year or before. */
                hatchedTo?: number;
                /** @description Inbreeding coefficient at least this, 0 to 1. */
                inbreedingFrom?: number;
                /** @description Inbreeding coefficient at most this, 0 to 1. */
                inbreedingTo?: number;
                /** @description Pedigree depth at least this many generations. */
                depthFrom?: number;
                /** @description Pedigree depth at most this many generations. */
                depthTo?: number;
                /** @description Mean kinship with the living animals of its line at least this, 0 to 1. */
                meanKinshipFrom?: number;
                /** @description Mean kinship with the living animals of its line at most this, 0 to 1. */
                meanKinshipTo?: number;
                /** @description Share of the genome traced to founders with papers at least this, 0 to 1. */
                tracedShareFrom?: number;
                /** @description Share of the genome traced to founders with papers at most this, 0 to 1. */
                tracedShareTo?: number;
                /** @description Ids or registry numbers with commas between them, at most 500: these animals and no others. */
                animals?: string;
                /** @description Write their ancestors, too, so that the sheet needs no other register; else parents outside it are registry numbers. */
                ancestors?: boolean;
            };
            header?: never;
            path?: never;
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            /** @description The sheet. */
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "text/csv": string;
                };
            };
            /** @description sign-in: only a member may do this, or the token is unknown, revoked or expired. */
            401: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description forbidden: your role or your token does not include this, or the record is another keeper’s. */
            403: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description invalid: a field cannot be taken; each is named in `errors`. */
            422: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description too-many: more was asked than is allowed in so short a time; Retry-After says in how many seconds to try again. */
            429: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
        };
    };
    takeForeignSheetForeignSheets: {
        parameters: {
            query?: {
                /** @description Only check the sheet and tell what would come in; store nothing. */
                dryRun?: boolean;
                /** @description Who may see the animals and sources that come in; club if left out. */
                visibility?: "private" | "club" | "public";
            };
            header?: never;
            path?: never;
            cookie?: never;
        };
        requestBody: {
            content: {
                "application/json": components["schemas"]["ForeignSheetRequest"];
            };
        };
        responses: {
            /** @description The sheet was only checked. */
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["ForeignSheetView"];
                };
            };
            /** @description The animals came in. */
            201: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["ForeignSheetView"];
                };
            };
            /** @description malformed: the request cannot be read as JSON. */
            400: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description sign-in: only a member may do this, or the token is unknown, revoked or expired. */
            401: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description forbidden: your role or your token does not include this, or the record is another keeper’s. */
            403: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description conflict or loop: a rule of the register stands against it as things are now; the records in the way are named. */
            409: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description too-large: the request is larger than this address takes. */
            413: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description invalid: a field cannot be taken; each is named in `errors`. */
            422: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description too-many: more was asked than is allowed in so short a time; Retry-After says in how many seconds to try again. */
            429: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
        };
    };
    listOtherRegistersOtherRegisters: {
        parameters: {
            query?: {
                /** @description How many items at most; 50 if left out. */
                limit?: number;
                /** @description Go on after this point: the `next` of the page before. */
                after?: string;
                /** @description Also count all items that match. */
                total?: boolean;
            };
            header?: never;
            path?: never;
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            /** @description One page of the list. */
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": {
                        items: components["schemas"]["OtherRegisterView"][];
                        /** @description Send it as `after` to go on; null at the end. */
                        next: string | null;
                        /** @description How many match in all; only with `total=true`. */
                        total?: number;
                    };
                };
            };
            /** @description sign-in: only a member may do this, or the token is unknown, revoked or expired. */
            401: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description forbidden: your role or your token does not include this, or the record is another keeper’s. */
            403: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description invalid: a field cannot be taken; each is named in `errors`. */
            422: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description too-many: more was asked than is allowed in so short a time; Retry-After says in how many seconds to try again. */
            429: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
        };
    };
    addOtherRegisterOtherRegisters: {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        requestBody: {
            content: {
                "application/json": components["schemas"]["NewOtherRegisterRequest"];
            };
        };
        responses: {
            201: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["OtherRegisterView"];
                };
            };
            /** @description malformed: the request cannot be read as JSON. */
            400: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description sign-in: only a member may do this, or the token is unknown, revoked or expired. */
            401: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description forbidden: your role or your token does not include this, or the record is another keeper’s. */
            403: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description conflict or loop: a rule of the register stands against it as things are now; the records in the way are named. */
            409: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description invalid: a field cannot be taken; each is named in `errors`. */
            422: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description too-many: more was asked than is allowed in so short a time; Retry-After says in how many seconds to try again. */
            429: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
        };
    };
    getOtherRegisterOtherRegisters: {
        parameters: {
            query?: never;
            header?: never;
            path: {
                id: string;
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["OtherRegisterView"];
                };
            };
            /** @description sign-in: only a member may do this, or the token is unknown, revoked or expired. */
            401: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description forbidden: your role or your token does not include this, or the record is another keeper’s. */
            403: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description not-found: there is no such record. */
            404: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description too-many: more was asked than is allowed in so short a time; Retry-After says in how many seconds to try again. */
            429: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
        };
    };
    addKeysOfOtherRegisterOtherRegisters: {
        parameters: {
            query?: never;
            header?: never;
            path: {
                id: string;
            };
            cookie?: never;
        };
        requestBody: {
            content: {
                "application/json": components["schemas"]["MoreKeysRequest"];
            };
        };
        responses: {
            201: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["OtherRegisterView"];
                };
            };
            /** @description malformed: the request cannot be read as JSON. */
            400: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description sign-in: only a member may do this, or the token is unknown, revoked or expired. */
            401: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description forbidden: your role or your token does not include this, or the record is another keeper’s. */
            403: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description not-found: there is no such record. */
            404: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description conflict or loop: a rule of the register stands against it as things are now; the records in the way are named. */
            409: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description invalid: a field cannot be taken; each is named in `errors`. */
            422: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description too-many: more was asked than is allowed in so short a time; Retry-After says in how many seconds to try again. */
            429: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
        };
    };
    withdrawOtherRegisterOtherRegisters: {
        parameters: {
            query?: never;
            header?: never;
            path: {
                id: string;
            };
            cookie?: never;
        };
        requestBody: {
            content: {
                "application/json": components["schemas"]["WithdrawalRequest"];
            };
        };
        responses: {
            201: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["OtherRegisterView"];
                };
            };
            /** @description malformed: the request cannot be read as JSON. */
            400: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description sign-in: only a member may do this, or the token is unknown, revoked or expired. */
            401: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description forbidden: your role or your token does not include this, or the record is another keeper’s. */
            403: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description not-found: there is no such record. */
            404: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description conflict or loop: a rule of the register stands against it as things are now; the records in the way are named. */
            409: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description invalid: a field cannot be taken; each is named in `errors`. */
            422: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description too-many: more was asked than is allowed in so short a time; Retry-After says in how many seconds to try again. */
            429: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
        };
    };
    restoreOtherRegisterOtherRegisters: {
        parameters: {
            query?: never;
            header?: never;
            path: {
                id: string;
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["OtherRegisterView"];
                };
            };
            /** @description sign-in: only a member may do this, or the token is unknown, revoked or expired. */
            401: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description forbidden: your role or your token does not include this, or the record is another keeper’s. */
            403: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description not-found: there is no such record. */
            404: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description conflict or loop: a rule of the register stands against it as things are now; the records in the way are named. */
            409: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
            /** @description too-many: more was asked than is allowed in so short a time; Retry-After says in how many seconds to try again. */
            429: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["ProblemView"];
                };
            };
        };
    };
}
