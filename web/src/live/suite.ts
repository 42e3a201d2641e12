/** The suite that an address names (`?suite=east`), or none: the first of the server. */
export function suiteIn(search: string): string | undefined {
  const suite = new URLSearchParams(search).get('suite') ?? '';
  return suite === '' ? undefined : suite.slice(0, 80);
}

/** A path of this server, for the suite of this page. */
export function inSuite(path: string, suite: string | undefined): string {
  if (suite === undefined) return path;
  return `${path}${path.includes('?') ? '&' : '?'}suite=${encodeURIComponent(suite)}`;
}
