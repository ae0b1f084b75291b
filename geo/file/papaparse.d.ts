/**
 * The one call of the library that is used here. Its own types speak of files, workers and streams, which this part of
 * the program is not to know.
 */
export function parse(
  text: string,
  options: { readonly delimiter: string; readonly preview: number },
): { readonly data: readonly (readonly string[])[] }
