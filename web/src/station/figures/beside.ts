/** A figure that helps with an item: its name at the board and what a button calls it. */
export interface Beside {
  readonly figure: string;
  readonly words: string;
}

const BESIDE: ReadonlyMap<string, Beside> = new Map([
  ['machine.cylinder', { figure: 'cylinder', words: 'Backup cylinder: minutes left' }],
  ['machine.vaporisers', { figure: 'mac', words: 'MAC for age' }],
  ['airway.tubes', { figure: 'tube', words: 'Tube size' }],
  ['monitors.basic', { figure: 'monitors', words: 'Monitors of the basic standard' }],
]);

/** @param ref of an item, with its room or case: `room:1/machine.cylinder` */
export function figureBeside(ref: string): Beside | undefined {
  return BESIDE.get(ref.slice(ref.indexOf('/') + 1));
}
