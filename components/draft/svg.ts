/** A picture that says nothing by itself because words stand beside it: without its name, and so without ids. */
export const unnamed = (svg: string): string =>
  svg
    .replace(/<title[^>]*>[^<]*<\/title>\n?/, '')
    .replace(/<title[^>]*\/>\n?/, '')
    .replace(/ role="img" aria-labelledby="[^"]*"/, ' aria-hidden="true" focusable="false"')
