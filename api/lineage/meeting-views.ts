import type { MeetingView } from './common-ancestors.view.ts';
import { FounderStandings } from './founder-standings.ts';
import type { Meeting } from './kernel/pair-steps.ts';
import type { LineageSnapshot } from './lineage-snapshot.ts';
import { sourceView } from './origin-views.ts';
import type { RecordNames, WantedNames } from './record-names.ts';

/** Asks for the names of where loops close. */
export function wantMeeting(wanted: WantedNames, meeting: Meeting): void {
  if (meeting.kind === 'individual') wanted.individuals.add(meeting.individual);
  else if (meeting.kind === 'unknown parent') wanted.clutches.add(meeting.clutch);
  else for (const source of [meeting.a, meeting.b]) wanted.sources.add(source);
}

/** Where loops close, by name; what may not be seen is named by what stands for it. */
export function meetingView(snapshot: LineageSnapshot, meeting: Meeting, names: RecordNames): MeetingView {
  switch (meeting.kind) {
    case 'individual':
      return { ancestor: names.refOf(meeting.individual) };
    case 'unknown parent':
      return {
        unknownParentOf: { ...names.idOf('clutch', meeting.clutch), title: names.clutchTitle(meeting.clutch) },
      };
    case 'sources': {
      const sources = meeting.a === meeting.b ? [meeting.a] : [meeting.a, meeting.b];
      // loops are the same whatever the label
      const founders = new FounderStandings(snapshot.graph, null);
      return { sources: sources.map((source) => sourceView(snapshot, source, founders.ofSource(source), names)) };
    }
  }
}

/** A number of loops as an answer tells it: JSON has no number for more than it can hold. */
export function countView(loops: number): number | null {
  return Number.isFinite(loops) ? loops : null;
}
