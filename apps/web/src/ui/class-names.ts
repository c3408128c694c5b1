/** Joins the class names that are given; leaves out what is false or missing. */
export function classNames(...names: readonly (string | false | null | undefined)[]): string {
  return names.filter(Boolean).join(' ');
}
