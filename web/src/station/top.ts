import { html, nothing, type TemplateResult } from 'lit';
import type { PersonPart } from '../generated/wire.ts';
import { goingWords } from '../hands/bands.ts';
import { minutesTo } from '../hands/clock.ts';
import { personName, useName, techniqueWords } from '../hands/words.ts';
import { proof } from '../look/index.ts';
import { isLeftOver } from './gone.ts';
import type { Station } from './main.ts';
import { peopleFor, type StationView } from './model.ts';

/** Room, case, who is here, and how long there is. */
export function top(at: Station, view: StationView): TemplateResult {
  return html`<header>
    <h1><span class="vh">Room </span>${at.room}</h1>
    <div class="case">${caseLines(at, view)}</div>
    ${view.plan || view.next || isLeftOver(at) ? hands(at, view) : nothing}
    <sunup-sign-on .live=${at.live} class=${view.plan || view.next ? 'vh' : ''}></sunup-sign-on>
    <div class="when">${when(at, view)}</div>
    <div class="proof">${proof(at.live)}</div>
  </header>`;
}

/** Who is here, and the other half of the work. */
function hands(at: Station, view: StationView): TemplateResult {
  const who = html`<div class="who">${whoIsHere(at)}</div>`;
  if (!view.plan) return who;
  const first = view.half === 'next' ? 'First case' : 'Set-up';
  return html`${who}
    <button class="half" @click=${() => at.showHalf(view.half === 'set-up' ? 'beside' : 'set-up')}>
      ${view.half === 'set-up' ? 'Room and team' : first}<small>show</small>
    </button>`;
}

function caseLines(at: Station, view: StationView): TemplateResult {
  const phase = at.suite?.phase;
  if (!at.live.state.everSeen) {
    return html`<span>&nbsp;</span>`;
  }
  if (view.half === 'next' && view.next) {
    return html`<span>Next case</span>
      <small>${techniqueWords(view.next)} · set up since ${at.hhmm(view.next.at)}</small>`;
  }
  if (!view.room || !view.plan) {
    return html`<span>&nbsp;</span>`;
  }
  const draft = phase === 'draft' ? 'draft: the desk opens the morning' : '';
  const use =
    view.room.use === 'free'
      ? ''
      : `${useName(view.room.use)}${view.room.useUntil ? ` until ${at.hhmm(view.room.useUntil)}` : ''}`;
  const lines = [techniqueWords(view.plan), use, draft].filter((w) => w !== '');
  return html`<span>${view.plan.procedure ?? view.plan.service ?? 'first case'}</span>
    <small>${lines.join(' · ')}</small>`;
}

function whoIsHere(at: Station): TemplateResult {
  const people = peopleFor(at.list('person'), at.room);
  const me = people.find((p) => p.person === at.person);
  const mine = people.filter((p) => p.ownRoom === at.room);
  const own =
    mine.find((p) => p.role === 'anaesthetist') ?? mine.find((p) => p.arrivedAt === undefined);
  if (me) {
    return html`<button @click=${() => at.show({ kind: 'who' })}>
      ${personName(me)}<small>${hereWords(at, me)}</small>
    </button>`;
  }
  // Signed on by code, and nobody of this morning's plan.
  const { signed } = at.live.state.entry;
  const words = signed ? `${signed.code} is signed on, without a post` : 'nobody signed on';
  return html`${
      own
        ? html`<button class="first" @click=${() => at.sign(own)}>
            I am here<small>${personName(own)}</small>
          </button>`
        : nothing
    }
    <button @click=${() => at.show({ kind: 'who' })}>
      ${own ? 'Someone else' : 'Who is here?'}<small>${words}</small>
    </button>`;
}

/** "arrived 06:38", or that it is not on the board yet. */
export function hereWords(at: Station, person: PersonPart): string {
  if (person.arrivedAt !== undefined) {
    return `arrived ${at.hhmm(person.arrivedAt)}`;
  }
  return goingWords(at, person.key) || 'not arrived';
}

function when(at: Station, view: StationView): TemplateResult | typeof nothing {
  const room = view.room;
  if (!room || room.target === undefined) {
    return nothing;
  }
  if (room.startedAt !== undefined) {
    return html`<b class="started"
        >started ${room.startInferred ? 'by ' : ''}${at.hhmm(room.startedAt)}</b
      >target ${at.hhmm(room.target)}`;
  }
  const left = minutesTo(room.target, at.now);
  // A start that was expected before the board fell silent is not said as if it still were.
  const about = at.live.state.stale ? undefined : (view.wait?.about ?? room.start50);
  return html`<b>${left >= 0 ? `${left} min` : `${-left} min past`}</b>to
    ${at.hhmm(room.target)}${room.agreed ? ' agreed' : ''}${
      about === undefined ? nothing : html` · about ${at.hhmm(about)}`
    }`;
}
