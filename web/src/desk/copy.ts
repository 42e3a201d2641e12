import { troubleWords } from '../live/index.ts';
import { html, nothing, type TemplateResult } from 'lit';
import type { ChancePart, Role, Tried, TriedRoom, TryChangeUnion } from '../generated/wire.ts';
import { onSubmit, timeField, timeIn } from '../hands/forms.ts';
import { roleName } from '../hands/words.ts';
import type { Desk } from './main.ts';
import { late, percent } from './model.ts';
import { CHANGES_MOST, changeWords, differing, savedOnCopy, tryOut } from './tried.ts';

/** Roles of which one more can be tried: those who serve several rooms. */
const FURTHER = [
  'technician',
  'supervisor',
  'holding',
  'porter',
  'cleaner',
] as const satisfies readonly Role[];

/** A copy of the morning that somebody is thinking about. Kept on this page only. */
export class CopyState {
  changes: readonly TryChangeUnion[] = [];
  tried: Tried | undefined;
  words = '';
  private asking: AbortController | undefined;
  private readonly at: Desk;

  constructor(at: Desk) {
    this.at = at;
  }

  get busy(): boolean {
    return this.asking !== undefined;
  }

  /** Another change of the copy; one of the same thing takes its place. What was asked is given up. */
  add(change: TryChangeUnion): void {
    const others = this.changes.filter((c) => aboutOf(c) !== aboutOf(change));
    this.set([...others, change].slice(-CHANGES_MOST));
  }

  remove(change: TryChangeUnion): void {
    this.set(this.changes.filter((c) => c !== change));
  }

  clear(): void {
    this.set([]);
  }

  private set(changes: readonly TryChangeUnion[]): void {
    this.changes = changes;
    this.tried = undefined;
    this.words = '';
    this.giveUp();
    if (changes.length > 0) void this.work();
    this.at.requestUpdate();
  }

  giveUp(): void {
    this.asking?.abort();
    this.asking = undefined;
  }

  /** Works the copy out by what the board knows now. */
  async work(): Promise<void> {
    this.giveUp();
    const asking = new AbortController();
    this.asking = asking;
    this.words = '';
    this.at.requestUpdate();
    try {
      const tried = await tryOut(this.changes, this.at.suite?.date ?? '', asking.signal);
      if (this.asking === asking) this.tried = tried;
    } catch (e) {
      if (this.asking === asking) {
        this.tried = undefined;
        this.words = troubleWords(e);
      }
    }
    if (this.asking === asking) this.asking = undefined;
    this.at.requestUpdate();
  }
}

/** What a change is about: a copy has one target a room, but may have two more technicians. */
function aboutOf(change: TryChangeUnion): unknown {
  switch (change.change) {
    case 'target':
      return `target/${change.room}`;
    case 'opens':
      return `opens/${change.place}`;
    default:
      return change;
  }
}

/** Change a copy of the morning and see both forecasts side by side. */
export function copyPanel(at: Desk, state: CopyState): TemplateResult {
  return html`<h2>Try on a copy</h2>
    <p class="dim">
      Change a copy of this morning and see what would come of it. Nothing is recorded and nobody is
      told: the board stays as it is.
    </p>
    ${changes(at, state)} ${forms(at, state)}
    <div role="status" class="cards">
      ${state.busy ? html`<p class="dim">working it out</p>` : nothing}
      ${state.words ? html`<p class="card ask">${state.words}</p>` : nothing}
      ${state.tried ? result(at, state.tried) : nothing}
    </div>`;
}

function changes(at: Desk, state: CopyState): TemplateResult | typeof nothing {
  if (state.changes.length === 0) return nothing;
  const labels = new Map(at.list('place').map((p) => [p.place, p.label]));
  return html`<div class="card on-it">
    <h3>On the copy</h3>
    ${state.changes.map((change) => {
      const words = changeWords(
        change,
        (t) => at.hhmm(t),
        (id) => labels.get(id) ?? id,
      );
      return html`<div class="line">
        <span class="grow">${words}</span>
        <button aria-label="Leave it as it is: ${words}" @click=${() => state.remove(change)}>
          As it is
        </button>
      </div>`;
    })}
    <div class="do">
      <button class="main" @click=${() => void state.work()}>Work it out again</button>
      <button @click=${() => state.clear()}>Throw the copy away</button>
    </div>
  </div>`;
}

function forms(at: Desk, state: CopyState): TemplateResult {
  const open = at.form === 'copy' || state.changes.length === 0;
  if (state.changes.length >= CHANGES_MOST) {
    return html`<p class="dim">${CHANGES_MOST} changes are the most that one copy has.</p>`;
  }
  if (!open) {
    return html`<div class="do">
      <button aria-expanded="false" @click=${() => at.toggle('copy')}>Change something else</button>
    </div>`;
  }
  const rooms = at.rows.filter((r) => r.plan && !r.plan.cancelled).map((r) => r.room.room);
  const kinds = [...new Set(at.list('unit').map((u) => u.kind))].sort();
  const places = [...at.list('place')].sort((a, b) => a.opensAt - b.opensAt);
  const add = (change: TryChangeUnion): void => {
    state.add(change);
    at.done();
  };
  const choose = (name: string, label: string, of: readonly string[], chosen = of[0]) =>
    html`<select name=${name} aria-label=${label}>
      ${of.map((r) => html`<option value=${r} ?selected=${r === chosen}>room ${r}</option>`)}
    </select>`;
  return html`<div class="card">
    ${
      rooms.length === 0
        ? html`<p class="dim">no first case on this morning: nothing to try</p>`
        : html`<form
            @submit=${onSubmit((fields, form) => {
              const time = timeIn(at, form, 'at');
              if (time !== undefined) add({ change: 'target', room: fields['room']!, at: time });
            })}
          >
            <div class="do">
              ${choose('room', 'copy: room with another target', rooms)}
              ${timeField('at', 'copy: meant to start at')}
              <button>Another target</button>
            </div>
          </form>`
    }
    ${
      rooms.length < 2
        ? nothing
        : html`<form
            @submit=${onSubmit((fields) => {
              const [one, other] = [fields['one']!, fields['other']!];
              if (one !== other) add({ change: 'swap', one, other });
            })}
          >
            <div class="do">
              ${choose('one', 'copy: case of room', rooms)}
              ${choose('other', 'copy: swapped with room', rooms, rooms[1])}
              <button>Swap their cases</button>
            </div>
          </form>`
    }
    ${places.map(
      (p) =>
        html`<form
          @submit=${onSubmit((_, form) => {
            const time = timeIn(at, form, 'at');
            if (time !== undefined) add({ change: 'opens', place: p.place, at: time });
          })}
        >
          <div class="do">
            <span class="grow">${p.label}, opens ${at.hhmm(p.opensAt)}</span>
            ${timeField('at', `copy: ${p.label} opens at`)}
            <button>Opens then</button>
          </div>
        </form>`,
    )}
    <div class="do">
      ${kinds.map(
        (kind) =>
          html`<button @click=${() => add({ change: 'one-more-unit', kind })}>
            One more ${kind}
          </button>`,
      )}
    </div>
    <form
      @submit=${onSubmit((fields) =>
        add({ change: 'one-more-person', role: fields['role'] as Role }),
      )}
    >
      <div class="do">
        <select name="role" aria-label="copy: one more of">
          ${FURTHER.map((role) => html`<option value=${role}>${roleName(role)}</option>`)}
        </select>
        <button>One more, for all rooms</button>
      </div>
    </form>
  </div>`;
}

function result(at: Desk, tried: Tried): TemplateResult {
  const { rooms, same } = differing(tried);
  const old = tried.upTo < at.live.upTo;
  return html`<div class="card ${old ? 'tight' : ''}">
    <p>
      <b>${savedOnCopy(tried.savedMinutes, tried.errorMinutes)}</b>
      late minutes of all rooms: ${tried.lateMinutes.toFixed(1)} as it is,
      ${tried.copyLateMinutes.toFixed(1)} on the copy
      <small
        >as of ${at.hhmm(tried.of)}, ${tried.trials} trials of each with the same chances; both
        count against the targets as they
        are${
          old ? html`<br /><b>The board has changed since: work it out again.</b>` : nothing
        }</small
      >
    </p>
    ${
      rooms.length === 0
        ? nothing
        : html`<table class="sides">
            <thead>
              <tr>
                <th scope="col">room</th>
                <th scope="col">as it is</th>
                <th scope="col">on the copy</th>
              </tr>
            </thead>
            <tbody>
              ${rooms.map((r) => row(at, r))}
            </tbody>
          </table>`
    }
    <p class="dim">${sameWords(rooms.length, same, silent(tried))}</p>
  </div>`;
}

/** Rooms of which no figure is shown, as nobody was heard from there. */
function silent(tried: Tried): number {
  return tried.rooms.filter((r) => r.chance.onTime === undefined).length;
}

function sameWords(different: number, same: number, silent: number): string {
  if (silent > 0 && different === 0) {
    return 'Rooms without a word count in the sum; no figure of one of them is shown.';
  }
  if (same === 0) return '';
  if (different === 0) return 'Nothing comes out otherwise in any room.';
  return same === 1
    ? 'The other room stays as it is.'
    : `The other ${same} rooms stay as they are.`;
}

function row(at: Desk, r: TriedRoom): TemplateResult {
  return html`<tr>
    <th scope="row">
      ${r.room}${
        r.savedMinutes === undefined || r.errorMinutes === undefined
          ? nothing
          : html`<small>${savedOnCopy(r.savedMinutes, r.errorMinutes)}</small>`
      }
    </th>
    <td>${side(at, r.chance, r.target)}</td>
    <td>${side(at, r.copyChance, r.copyTarget)}</td>
  </tr>`;
}

function side(at: Desk, chance: ChancePart, target: number): TemplateResult {
  if (chance.onTime === undefined) {
    return html`not known: no word<small>meant for ${at.hhmm(target)}</small>`;
  }
  const start =
    chance.moreThanHours !== undefined
      ? `over ${chance.moreThanHours} h late`
      : `about ${at.hhmm(chance.start50)}`;
  const first = chance.shares[0];
  return html`<b>${start}</b> ${percent(chance.onTime)} on time
    <small
      >meant for
      ${at.hhmm(target)}${late(chance) && ` · ${late(chance)}`}${
        first ? html`<br />${first.words} ${percent(first.share)}` : nothing
      }</small
    >`;
}
