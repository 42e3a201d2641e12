import { html, nothing, type TemplateResult } from 'lit';
import { repeat } from 'lit/directives/repeat.js';
import type { PersonPart, Role } from '../generated/wire.ts';
import { codeField, onSubmit, textField, timeField, timeIn } from '../hands/forms.ts';
import { personName } from '../hands/words.ts';
import { say } from '../look/index.ts';
import type { Desk } from './main.ts';
import { type DeskRow, isFree, peopleInOrder } from './model.ts';

/** Who is here, who is not, and what can be arranged: arrived, expected, left, handed over. */
export function peoplePanel(at: Desk, rows: readonly DeskRow[]): TemplateResult {
  const people = peopleInOrder(at.list('person'), at.now);
  const away = people.filter((p) => p.arrivedAt === undefined && p.leftAt === undefined);
  return html`<h2>People</h2>
    <p class="dim">${away.length === 0 ? 'everyone has arrived' : `${away.length} not here yet`}</p>
    ${repeat(
      people,
      (p) => p.key,
      (p) => card(at, rows, p, people),
    )}
    ${standIn(at)}`;
}

/** Who may stand in: those who make rooms and patients ready. */
const ROLES = [
  'anaesthetist',
  'supervisor',
  'trainee',
  'technician',
  'circulating',
  'scrub',
  'surgeon',
  'holding',
  'porter',
  'cleaner',
  'pharmacy',
] as const satisfies readonly Role[];

const STAND_IN = 'stand-in';

/** Somebody whom the plan does not have. */
function standIn(at: Desk): TemplateResult {
  const open = at.form === STAND_IN;
  const rooms = at.rows.map((r) => r.room.room);
  return html`<div class="do">
      <button aria-expanded=${open} @click=${() => at.toggle(STAND_IN)}>Add a stand-in</button>
    </div>
    ${
      open
        ? html`<form
            class="card"
            @submit=${onSubmit((fields, form) => {
              const plannedAt = timeIn(at, form, 'from');
              const id = fields['id'] ?? '';
              const role = fields['role'] as Role;
              if (plannedAt !== undefined && id !== '') {
                const room = fields['room'] ? { room: fields['room'] } : {};
                at.tell(`${sayRole(role)} ${id} from ${at.hhmm(plannedAt)}`, {
                  type: 'add-person',
                  plan: { id, role, plannedAt, ...room },
                });
                at.done();
              }
            })}
          >
            <div class="do">
              <select name="role" aria-label="role of the stand-in">
                ${ROLES.map((r) => html`<option value=${r}>${sayRole(r)}</option>`)}
              </select>
              <select name="room" aria-label="room of the stand-in">
                <option value="">several rooms</option>
                ${rooms.map((r) => html`<option value=${r}>room ${r}</option>`)}
              </select>
              ${timeField('from', 'planned from')} ${codeField('id', 'code, no name')}
              <button class="main">Add</button>
            </div>
          </form>`
        : nothing
    }`;
}

function sayRole(role: Role): string {
  return say(`role.${role}`);
}

function card(
  at: Desk,
  rows: readonly DeskRow[],
  p: PersonPart,
  people: PersonPart[],
): TemplateResult {
  const open = at.form === p.key;
  return html`<div class="line">
      <span
        class="mark ${p.leftAt !== undefined ? 'left-out' : p.arrivedAt !== undefined ? 'good' : 'open'}"
      ></span>
      <span class="grow">${personName(p)}<small>${personWords(at, rows, p)}</small></span>
      ${
        p.arrivedAt === undefined
          ? html`<button
              aria-label="${personName(p)} arrived"
              @click=${() =>
                at.tell(`${personName(p)} arrived`, {
                  type: 'arrive',
                  person: p.person,
                  ...(p.ownRoom ? { room: p.ownRoom } : {}),
                })}
            >
              Arrived
            </button>`
          : nothing
      }
      <button
        aria-expanded=${open}
        aria-label="${personName(p)}: more"
        @click=${() => at.toggle(p.key)}
      >
        …
      </button>
    </div>
    ${open ? more(at, p, people) : nothing}`;
}

function personWords(at: Desk, rows: readonly DeskRow[], p: PersonPart): string {
  if (p.leftAt !== undefined) {
    return p.arrivedAt === undefined ? 'does not come' : `left ${at.hhmm(p.leftAt)}`;
  }
  if (p.arrivedAt === undefined) {
    const expected = p.expectedAt === undefined ? '' : ` · says ${at.hhmm(p.expectedAt)}`;
    return `planned ${at.hhmm(p.plannedAt)}${expected}`;
  }
  const where = p.room ? `in ${p.room}` : 'in no room';
  const free = isFree(p, rows) ? ` · free: ${p.room ?? p.ownRoom} has no case` : '';
  const word = p.lastWordAt === undefined ? '' : ` · last word ${at.hhmm(p.lastWordAt)}`;
  return `arrived ${at.hhmm(p.arrivedAt)} · ${where}${free}${word}`;
}

function more(at: Desk, p: PersonPart, people: PersonPart[]): TemplateResult {
  const rooms = at.rows.map((r) => r.room.room);
  const others = people.filter(
    (o) => o.person !== p.person && o.arrivedAt !== undefined && o.leftAt === undefined,
  );
  const room = p.room ?? p.ownRoom;
  return html`<div class="card">
    ${
      p.arrivedAt === undefined
        ? html`<form
            @submit=${onSubmit((fields, form) => {
              const time = timeIn(at, form, 'at');
              if (time !== undefined) {
                const said = fields['said'] ?? '';
                at.tell(`${personName(p)} expected ${at.hhmm(time)}`, {
                  type: 'expect-person',
                  person: p.person,
                  at: time,
                  ...(said === '' ? {} : { said }),
                });
                at.done();
              }
            })}
          >
            <div class="do">
              ${timeField('at', `${personName(p)} expected at`)}
              ${textField('said', 'what was said')}
              <button>Expected</button>
              <button
                type="button"
                @click=${() => {
                  at.tell(`${personName(p)} does not come`, { type: 'leave', person: p.person });
                  at.done();
                }}
              >
                Does not come
              </button>
            </div>
          </form>`
        : html`<form
              @submit=${onSubmit((fields) => {
                at.tell(`${personName(p)} goes to ${fields['room']}`, {
                  type: 'join',
                  person: p.person,
                  room: fields['room']!,
                });
                at.done();
              })}
            >
              <div class="do">
                <select name="room" aria-label="goes to room">
                  ${rooms.map((r) => html`<option value=${r}>room ${r}</option>`)}
                </select>
                <button>Goes there</button>
                <button
                  type="button"
                  @click=${() => {
                    at.tell(`${personName(p)} left`, { type: 'leave', person: p.person });
                    at.done();
                  }}
                >
                  Left for today
                </button>
                <button
                  type="button"
                  @click=${() => {
                    at.tell(`${personName(p)} is taken by an emergency`, {
                      type: 'leave',
                      person: p.person,
                    });
                    at.done();
                  }}
                >
                  Emergency takes ${personName(p)}
                </button>
              </div>
            </form>
            ${room && others.length > 0 ? handOver(at, p, others, room) : nothing}`
    }
  </div>`;
}

function handOver(at: Desk, p: PersonPart, others: PersonPart[], room: string): TemplateResult {
  return html`<form
    @submit=${onSubmit((fields) => {
      const to = others.find((o) => o.person === fields['to']);
      if (to) {
        at.tell(`room ${room}: ${personName(p)} hands over to ${personName(to)}`, {
          type: 'hand-over',
          from: p.person,
          to: to.person,
          room,
        });
        at.done();
      }
    })}
  >
    <div class="do">
      <select name="to" aria-label="hands over to">
        ${others.map((o) => html`<option value=${o.person}>${personName(o)}</option>`)}
      </select>
      <button>Hands over room ${room}</button>
    </div>
  </form>`;
}
