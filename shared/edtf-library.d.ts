/** The edtf library carries no types of its own; this is the part that we use. */
declare module 'edtf' {
  interface ExtendedDate {
    readonly type: 'Date' | 'Year' | 'Season' | 'Interval' | 'Decade' | 'Century' | 'Set' | 'List';
    /** First and last millisecond since 1970 that the date may mean. */
    readonly min: number;
    readonly max: number;
  }
  export default function parse(text: string, options?: { level?: 0 | 1 | 2 }): ExtendedDate;
}
