import { html, nothing, type TemplateResult } from 'lit';
import { count, roleName } from '../hands/words.ts';
import { clockTime, dateOf, dateWords } from '../look/index.ts';
import type { Checked, Coming, Minutes, Overview, Problem, Published, Sheet } from './api.ts';
import type { Sheets } from './main.ts';
import { difference, editWords, minutes } from './model.ts';

/** What the draft does: its minutes, what is wrong with it, and the next cases. */
export function doesPanel(checked: Checked): TemplateResult {
  return html`${problemsPanel(checked.problems)} ${minutesPanel(checked.sheet, checked.on)}
  ${comingPanel(checked)}`;
}

export function place(problem: Problem): string {
  const at = problem.line > 0 ? `${problem.file}, line ${problem.line}` : problem.file;
  return problem.field === '' ? at : `${at}, ${problem.field}`;
}

function problemsPanel(problems: readonly Problem[]): TemplateResult | typeof nothing {
  if (problems.length === 0) return nothing;
  return html`<div class="wrong" role="alert">
    <h3>${count(problems.length, 'problem')} to mend first</h3>
    <ul>
      ${problems.map((p) => html`<li><b>${place(p)}</b>: ${p.message}</li>`)}
    </ul>
  </div>`;
}

export function editionWords(edition: number): string {
  return edition === 0 ? 'Sunup’s sheets' : `edition ${edition}`;
}

function minutesPanel(sheet: Sheet, on: number): TemplateResult {
  const { before, after } = sheet;
  const shown = after ?? before;
  if (shown === undefined)
    return html`<h3>Minutes</h3>
      <p>This sheet makes no list now.</p>`;
  const rows: readonly [string, (m: Minutes) => number][] = [
    ['set-up, usual', (m) => m.setUp.handsUsual],
    ['set-up, in the mean', (m) => m.setUp.handsMean],
    ['all, usual', (m) => m.all.handsUsual],
    ['all, in the mean', (m) => m.all.handsMean],
    ['waiting, nobody there', (m) => m.all.waitsUsual],
    ['longest chain', (m) => m.leastUsual],
    ['items', (m) => m.all.items],
  ];
  const cell = (m: Minutes | undefined, of: (m: Minutes) => number) =>
    m === undefined ? '–' : minutes(of(m));
  return html`<h3>
      Minutes of its
      list${sheet.kind === 'option' || sheet.kind === 'personal' ? ` (with ${sheet.technique})` : ''}
    </h3>
    <table>
      <thead>
        <tr>
          <td></td>
          <th scope="col" class="number">${editionWords(on)}</th>
          <th scope="col" class="number">draft</th>
          <th scope="col" class="number">other by</th>
        </tr>
      </thead>
      <tbody>
        ${rows.map(
          ([name, of]) =>
            html`<tr>
              <th scope="row">${name}</th>
              <td class="number">${cell(before, of)}</td>
              <td class="number"><b>${cell(after, of)}</b></td>
              <td class="number">${before && after ? difference(of(before), of(after)) : '–'}</td>
            </tr>`,
        )}
      </tbody>
    </table>
    <details>
      <summary>By who does it</summary>
      <ul>
        ${shown.shares.map(
          (share) =>
            html`<li>
              ${share.who.map(roleName).join(' or ')}: ${minutes(share.sum.handsUsual)} min
            </li>`,
        )}
      </ul>
    </details>`;
}

function comingPanel(checked: Checked): TemplateResult {
  const { coming } = checked;
  return html`<h3>The next booked cases</h3>
    ${
      coming.length === 0
        ? html`<p>No case is booked from today on.</p>`
        : html`<p class="dim">
            What a list taken with the draft would have otherwise. Nothing of a morning that is
            planned changes by itself.
          </p>`
    }
    ${coming.map(caseLine)}`;
}

function caseLine(one: Coming): TemplateResult {
  const keeps = `${one.open ? 'open, keeps' : 'planned with'} ${editionWords(one.keeps)}`;
  const what = [one.technique, ...one.options].join(', ');
  const other = [
    ...one.added.map((desk) => `comes: ${desk}`),
    ...one.gone.map((desk) => `goes: ${desk}`),
    ...one.changed,
    ...(one.moved === 0 ? [] : [`${count(one.moved, 'item')} in another place`]),
  ];
  return html`<div class="case">
    <b>Room ${one.room}, ${one.start}</b>${
      one.minutes === undefined || one.minutes === 0 ? '' : `${difference(0, one.minutes)} min`
    }
    <small>${dateWords(one.date)} · ${what} · ${keeps}</small>
    ${
      one.problems.length > 0
        ? html`<ul>
            ${one.problems.map((p) => html`<li><b>${place(p)}</b>: ${p.message}</li>`)}
          </ul>`
        : other.length === 0
          ? html`<span>nothing changes</span>`
          : html`<ul>
              ${other.map((words) => html`<li>${words}</li>`)}
            </ul>`
    }
  </div>`;
}

/** What the draft is made of, publishing it and throwing it away. */
export function draftPanel(at: Sheets, checked: Checked | undefined): TemplateResult {
  const { draft, overview } = at;
  if (draft === undefined || draft.edits.length === 0) {
    return html`<h3>Draft</h3>
      <p>Nothing is changed yet. Change an item; nobody else sees it before it is published.</p>`;
  }
  const known = [...at.names, ...(overview?.sheets ?? [])];
  const title = (name: string) => known.find((s) => s.name === name)?.title ?? name;
  return html`<h3>Draft on ${editionWords(draft.on)}</h3>
    <ul class="plain">
      ${draft.edits.map(
        (edit, i) =>
          html`<li class="undo row">
            <span>${editWords(edit, title)}</span>
            <button aria-label="take back: ${editWords(edit, title)}" @click=${() => at.drop(i)}>
              Take back
            </button>
          </li>`,
      )}
    </ul>
    ${checked?.since === undefined ? nothing : overtaken(at, checked)}
    ${
      checked?.changes.length
        ? html`<details>
            <summary>${count(checked.changes.length, 'line')} that will be kept of it</summary>
            <ul>
              ${checked.changes.map((words) => html`<li>${words}</li>`)}
            </ul>
          </details>`
        : nothing
    }
    <div class="row">
      <label
        >why, in a few words
        <input
          maxlength="200"
          autocomplete="off"
          .value=${at.note}
          @input=${(e: InputEvent) => (at.note = (e.target as HTMLInputElement).value)}
      /></label>
    </div>
    <div class="row">
      <button
        class="main"
        ?disabled=${at.busy || checked?.ready !== true || at.live.state.stale}
        @click=${() => void at.publish()}
      >
        Publish as edition ${draft.on + 1}
      </button>
      <button @click=${() => at.throwAway()}>
        ${at.sure ? 'Yes, throw the draft away' : 'Throw the draft away…'}
      </button>
    </div>`;
}

function overtaken(at: Sheets, checked: Checked): TemplateResult {
  const { since } = checked;
  return html`<div class="wrong" role="alert">
    <h3>Edition ${checked.edition} was published meanwhile</h3>
    <p>It changed ${count(since?.changes.length ?? 0, 'thing')}. Your draft is kept.</p>
    ${
      since?.both.length
        ? html`<p>Both of you are at work on ${since.both.join(', ')}: look at these.</p>`
        : nothing
    }
    <div class="row">
      <button @click=${() => at.layOn(checked.edition)}>
        Lay the draft on edition ${checked.edition}
      </button>
    </div>
  </div>`;
}

/** What was published, newest first, and going back to it. */
export function editionsPanel(at: Sheets, overview: Overview): TemplateResult {
  return html`<h3>Editions</h3>
    <ul class="plain">
      ${overview.editions.map((one) => editionLine(at, overview, one))}
      <li class="case">
        <b>${overview.edition === 0 ? 'In use: ' : ''}The sheets that come with Sunup</b>
        ${overview.edition === 0 ? nothing : goBack(at, 0)}
      </li>
    </ul>`;
}

function editionLine(at: Sheets, overview: Overview, one: Published): TemplateResult {
  const when = `${dateWords(dateOf(one.at, overview.zone))}, ${clockTime(one.at, overview.zone)}`;
  const who = [roleName(one.role), one.person, `at ${one.screen}`].filter(Boolean).join(' ');
  return html`<li class="case">
    <b>${one.edition === overview.edition ? 'In use: ' : ''}Edition ${one.edition}</b>
    <small>${when} · ${who}${one.note === undefined ? '' : ` · “${one.note}”`}</small>
    <details>
      <summary>${count(one.changes.length, 'change')}</summary>
      <ul>
        ${one.changes.map((words) => html`<li>${words}</li>`)}
      </ul>
    </details>
    ${one.edition === overview.edition ? nothing : goBack(at, one.edition)}
  </li>`;
}

function goBack(at: Sheets, edition: number): TemplateResult {
  return html`<div class="row">
    <button
      aria-label="go back to ${edition === 0 ? 'the sheets that come with Sunup' : `edition ${edition}`}"
      @click=${() => at.goBack(edition)}
    >
      Go back to it…
    </button>
  </div>`;
}
