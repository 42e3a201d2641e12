/**
 * What a paired screen shows with each question beside its socket. One a page, as there is one screen
 * a page; where screens are not paired there is none.
 */
let pass: string | undefined;

export function knowPass(known: string | undefined): void {
  pass = known;
}

/** Headers of a request to the board. */
export function passHeaders(): Record<string, string> {
  return pass === undefined ? {} : { 'sunup-pass': pass };
}
