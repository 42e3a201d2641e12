import { html, nothing, type TemplateResult } from 'lit';
import type { AccessAskUnion, AccessList, Role, ScreenRow } from '../generated/wire.ts';
import { codeField, onSubmit } from '../hands/forms.ts';
import { say } from '../look/index.ts';
import type { Desk } from './main.ts';

const PAGES = ['station', 'wall', 'holding', 'desk', 'pocket'] as const;
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
  'desk',
  'manager',
  'admin',
] as const satisfies readonly Role[];

/** What this desk was told of screens and people, and what it is asking. */
export class AccessState {
  list: AccessList | undefined;
  words = '';
  /** The code that was looked up, while its screen is being said to be ours. */
  code = '';
  private of = '';
  private readonly desk: Desk;

  constructor(desk: Desk) {
    this.desk = desk;
  }

  /** Asks anew when somebody else signs on. */
  look(): void {
    const by = this.desk.live.state.entry.signed?.session ?? '';
    if (by === this.of) return;
    this.of = by;
    this.list = undefined;
    this.words = '';
    this.code = '';
    if (by !== '') void this.ask({ ask: 'look' });
  }

  async ask(ask: AccessAskUnion): Promise<boolean> {
    const told = await this.desk.live.entry.ask(ask);
    this.words = told.words;
    if (told.list) this.list = told.list;
    this.code = told.done ? (told.list?.asks?.code ?? '') : this.code;
    this.desk.requestUpdate();
    return told.done;
  }
}

/** Which screens are ours and who may sign on. */
export function screensPanel(at: Desk, access: AccessState): TemplateResult {
  access.look();
  const { list, words } = access;
  const signed = at.live.state.entry.signed;
  return html`<h2>Screens and people</h2>
    ${
      signed
        ? html`<div class="do">
            <button @click=${() => void access.ask({ ask: 'look' })}>Look again</button>
          </div>`
        : html`<p>Sign on first: this is asked of a person.</p>`
    }
    <p role="status"><b>${words}</b></p>
    ${list ? html`${newScreen(at, access)} ${screens(at, access, list)} ${people(at, access, list)}` : nothing}`;
}

function newScreen(at: Desk, access: AccessState): TemplateResult {
  const asks = access.code === '' ? undefined : access.list?.asks;
  if (!asks) {
    return html`<form
      class="card"
      @submit=${onSubmit((fields, form) => {
        void access.ask({ ask: 'look-up', code: fields['code'] ?? '' });
        form.reset();
      })}
    >
      <div class="do">
        <input
          class="text"
          name="code"
          required
          maxlength="20"
          autocomplete="off"
          aria-label="code that a new screen shows"
          placeholder="code that a new screen shows"
        />
        <button class="main">Look</button>
      </div>
    </form>`;
  }
  return html`<form
    class="card"
    @submit=${onSubmit((fields) => {
      const page = fields['page'] ?? '';
      const room = page === 'station' ? { room: fields['room'] ?? '' } : {};
      void access.ask({ ask: 'pair', code: asks.code, page, ...room });
    })}
  >
    <p>
      <b>${asks.address}</b> asked at ${at.hhmm(asks.at)}. Only if you see that screen, or trust who
      reads its code to you, say what it is:
    </p>
    <div class="do">
      <select name="page" aria-label="what the screen is">
        ${PAGES.map((p) => html`<option value=${p} ?selected=${p === asks.page}>${p}</option>`)}
      </select>
      ${
        // Screens are set up before the first case list, which names the rooms.
        at.rows.length === 0
          ? html`<input
              class="text"
              name="room"
              maxlength="16"
              autocomplete="off"
              aria-label="room of a station"
              placeholder="room of a station"
            />`
          : html`<select name="room" aria-label="room of a station">
              ${at.rows.map((r) => html`<option value=${r.room.room}>room ${r.room.room}</option>`)}
            </select>`
      }
      <button class="main">It is ours</button>
      <button
        type="button"
        @click=${() => {
          access.code = '';
          at.requestUpdate();
        }}
      >
        It is not
      </button>
    </div>
  </form>`;
}

function screens(at: Desk, access: AccessState, list: AccessList): TemplateResult {
  return html`<h3>Screens</h3>
    ${list.screens.map((s) => screen(at, access, s))}`;
}

function screen(at: Desk, access: AccessState, s: ScreenRow): TemplateResult {
  const form = `revoke/${s.screen}`;
  const open = at.form === form;
  const small = [
    s.sockets > 0 ? 'connected' : 'not connected here',
    s.signed === undefined ? '' : `${s.signed} signed on`,
    `paired by ${s.pairedBy}`,
  ];
  return html`<div class="line">
      <span class="mark ${s.sockets > 0 ? 'good' : 'open'}"></span>
      <span class="grow">${s.name}<small>${small.filter((w) => w !== '').join(' · ')}</small></span>
      <button
        aria-expanded=${open}
        aria-label="${s.name}: not ours any more"
        @click=${() => at.toggle(form)}
      >
        …
      </button>
    </div>
    ${
      open
        ? html`<div class="card do">
            <button
              class="main"
              @click=${() => {
                void access.ask({ ask: 'revoke', screen: s.screen });
                at.done();
              }}
            >
              ${s.name} is none of ours: close it now
            </button>
          </div>`
        : nothing
    }`;
}

function people(at: Desk, access: AccessState, list: AccessList): TemplateResult {
  const admin = at.live.state.entry.signed?.role === 'admin';
  return html`<h3>People</h3>
    ${list.locks.map(
      (l) =>
        html`<div class="line">
          <span class="grow">${l.person}<small>locked at ${l.name}</small></span>
          <button
            @click=${() => void access.ask({ ask: 'lift', person: l.person, screen: l.screen })}
          >
            Let ${l.person} try again
          </button>
        </div>`,
    )}
    ${list.people.map((p) => {
      const form = `person/${p.person}`;
      const open = at.form === form;
      return html`<div class="line">
          <span class="grow"
            >${p.person}<small>${p.roles.map((r) => say(`role.${r}`)).join(', ')}</small></span
          >
          ${
            admin
              ? html`<button
                  aria-expanded=${open}
                  aria-label="${p.person}: more"
                  @click=${() => at.toggle(form)}
                >
                  …
                </button>`
              : nothing
          }
        </div>
        ${open && admin ? person(at, access, p.person, p.roles) : nothing}`;
    })}
    ${admin ? newPerson(at, access) : nothing}`;
}

function roleBoxes(has: readonly Role[]): TemplateResult {
  return html`<fieldset>
    <legend>roles in this suite</legend>
    ${ROLES.map(
      (r) =>
        html`<label
          ><input type="checkbox" name="role-${r}" ?checked=${has.includes(r)} /> ${say(
            `role.${r}`,
          )}</label
        > `,
    )}
  </fieldset>`;
}

const pinField = (label: string, required: boolean): TemplateResult =>
  html`<input
    name="pin"
    type="password"
    inputmode="numeric"
    autocomplete="off"
    maxlength="12"
    ?required=${required}
    aria-label=${label}
    placeholder=${label}
  />`;

function rolesOf(fields: Record<string, string>): Role[] {
  return ROLES.filter((r) => fields[`role-${r}`] !== undefined);
}

function person(
  at: Desk,
  access: AccessState,
  code: string,
  roles: readonly Role[],
): TemplateResult {
  return html`<form
    class="card"
    @submit=${onSubmit((fields) => {
      const pin = fields['pin'] ? { pin: fields['pin'] } : {};
      void access.ask({ ask: 'set-person', code, roles: rolesOf(fields), ...pin });
      at.done();
    })}
  >
    ${roleBoxes(roles)}
    <div class="do">
      ${pinField('a new PIN, or none', false)}
      <button class="main">Keep</button>
      <button
        type="button"
        @click=${() => {
          void access.ask({ ask: 'end-person', person: code });
          at.done();
        }}
      >
        ${code} may not sign on any more
      </button>
    </div>
  </form>`;
}

function newPerson(at: Desk, access: AccessState): TemplateResult {
  const open = at.form === 'new-person';
  return html`<div class="do">
      <button aria-expanded=${open} @click=${() => at.toggle('new-person')}>Add a person</button>
    </div>
    ${
      open
        ? html`<form
            class="card"
            @submit=${onSubmit((fields) => {
              const { code = '', pin = '' } = fields;
              void access.ask({ ask: 'set-person', code, pin, roles: rolesOf(fields) });
              at.done();
            })}
          >
            ${codeField('code', 'code, no name')} ${roleBoxes([])}
            <div class="do">
              ${pinField('first PIN', true)}
              <button class="main">Add</button>
            </div>
          </form>`
        : nothing
    }`;
}
