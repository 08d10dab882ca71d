/** The edtf library carries no types of its own; this is the part that we use. */
declare module 'edtf' {
  interface ExtendedDate {
    /** First and last millisecond since 1970 that the date may mean. */
    readonly min: number;
    readonly max: number;
  }
  /** Asked only whether a date is one of them. */
  interface DateClass {
    [Symbol.hasInstance](value: unknown): boolean;
  }
  export const Date: DateClass;
  export const Season: DateClass;
  export default function parse(text: string, options?: { level?: 0 | 1 | 2 }): ExtendedDate;
}
