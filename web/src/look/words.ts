import { both, type BothKey, BOTH_KEYS, type Fill, speaker } from '../words/index.ts';

/** What reads alike in British and American; the rest stands in `words/tables.ts`. */
const common = {
  caution:
    'Ready means reported ready, not safe. Sunup does not decide, monitor patients or replace a check.',
  'live.mark': 'moves while the board is live',
  'pace.demo': 'demo',
  'pace.demo-fast': 'demo at {rate} times speed',
  'pace.fast': '{rate} times speed',
  'stale.never': 'Not live · waiting for the board',
  'stale.no-suite': 'There is no suite of the name in this address',
  'stale.no-suite-do': 'Put it right after “suite=”, or leave it out for the first suite.',
  'stale.since': 'Not live since {time}',
  'stale.since-unknown': 'Not live',
  'stale.do': 'What you see is old. Do not act on it. Ask by telephone.',
  'stale.hands-do': 'What others did since is missing. What you touch is kept here and sent later.',
  'stale.never-do': 'Nothing has been received yet. Trying again all the time.',
  'read-only': 'The board cannot save at the moment',
  'read-only.do': 'Touches are kept on this screen and sent when it can.',
  full: 'Too many touches are waiting',
  'full.do': 'Nothing more is taken on this screen. Use paper and tell the desk.',
  'not-durable': 'This browser does not keep touches',
  'not-durable.do': 'Leave this page open until everything is sent.',
  'entry.new': 'A new screen',
  'entry.do': 'Somebody at a desk opens “screens”, types this code, and says what this screen is.',
  'entry.of': '{address} · asked at {at} · counts until {until}',
  'entry.no-keys': 'This page can’t keep a key',
  'entry.no-keys-do':
    'Open the board over https, or on the machine that it runs on, in a browser that is not private.',
  'entry.elsewhere': 'This screen is {name}',
  'entry.elsewhere-go': 'Open its page',
  'entry.first': 'The first administrator',
  'entry.first-do':
    'This screen becomes the desk. Choose a code for yourself, no name, and a PIN of 4 to 12 digits.',
  'entry.code': 'your code',
  'entry.pin': 'PIN',
  'entry.pin-again': 'the PIN again',
  'entry.pins-differ': 'The two PINs differ.',
  'entry.begin': 'Begin',
  'entry.own': 'Or, if this browser is your own:',
  'entry.sign-in': 'Sign on with {name}',
  'entry.not-on': 'Not signed on',
  'entry.go-on': 'Go on',
  'entry.again': 'Try again',
  'role.supervisor': 'supervisor',
  'role.trainee': 'trainee',
  'role.technician': 'technician',
  'role.circulating': 'circulating nurse',
  'role.scrub': 'scrub',
  'role.surgeon': 'surgeon',
  'role.holding': 'holding',
  'role.cleaner': 'cleaner',
  'role.pharmacy': 'pharmacy',
  'role.desk': 'desk',
  'role.manager': 'manager',
  'role.admin': 'admin',
  'role.display': 'display',
  'section.machine': 'machine',
  'section.suction': 'suction',
  'section.monitors': 'monitors',
  'section.airway': 'airway',
  'section.iv': 'IV',
  'section.drugs': 'drugs',
  'section.special': 'special',
  'section.room': 'room',
  'section.instruments': 'instruments',
  'section.patient': 'patient',
  'section.surgeon': 'surgeon',
  'section.team': 'team',
  'section.start': 'start',
  'step.sent-for': 'sent for',
  'step.wheels-in': 'wheels in',
  'step.induction': 'induction',
  'step.incision': 'incision',
  'use.free': 'free',
  'use.occupied': 'occupied',
  'use.cleaning': 'being cleaned',
  'use.emergency': 'emergency',
  'standing.ready': 'ready',
  'standing.ahead': 'ahead',
  'standing.tight': 'tight',
  'standing.late': 'late',
  'standing.stuck': 'stuck',
  'standing.unheard': 'no word',
  'standing.agreed': 'agreed',
  'standing.started': 'started',
  'standing.none': 'no case',
  'standing.no-figures': 'no figures',
  'figures.old': 'figures of {time}',
  'figures.failed': 'figures of {time}, no newer ones',
  'asks.one': '{rooms} asks for someone',
  'asks.more': '{rooms} ask for someone',
  asks: 'asks for someone',
  'late.by': '+{minutes}',
  'late.over': 'over {hours} h',
} as const;

export type CommonKey = keyof typeof common | BothKey;

const sayCommon = speaker(common);

/** Says a common word. */
export function say(key: CommonKey, fill?: Fill): string {
  return BOTH_KEYS.has(key) ? both(key as BothKey) : sayCommon(key as keyof typeof common, fill);
}

/** "+11", or ">4 h" where there is little room. */
export function lateBrief(minutes: number, orMore: boolean): string {
  return orMore ? `>${Math.floor(minutes / 60)} h` : lateBy(minutes, false);
}

/** "+11", or "over 4 h" beyond what is computed. */
export function lateBy(minutes: number, orMore: boolean): string {
  return orMore
    ? say('late.over', { hours: Math.floor(minutes / 60) })
    : say('late.by', { minutes });
}
