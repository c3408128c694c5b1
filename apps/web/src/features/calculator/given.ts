/** A value under its name where there is one: optional inputs are left out and never undefined. */
export function given<Name extends string, Value>(name: Name, value: Value | undefined) {
  return (value === undefined ? {} : { [name]: value }) as { readonly [Key in Name]?: Value };
}
