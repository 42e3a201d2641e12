import { html, nothing, type TemplateResult } from 'lit';
import type { Section, Step } from '../generated/wire.ts';
import { sectionName, stepName } from '../hands/words.ts';
import type { Fields, Sheet } from './api.ts';
import { itemForm } from './form.ts';
import type { Sheets } from './main.ts';
import { formOf, standsFor } from './fields.ts';
import { headPanel } from './head.ts';
import { found, minutes, sectionOf } from './model.ts';

const KINDS: Record<Sheet['kind'], string> = {
  base: 'A base: what a list begins with.',
  technique: 'A technique: it adds to its base, changes it and takes from it.',
  option: 'An option: it adds to a list, changes it and takes from it.',
  personal:
    'A person’s own: it adds what is only advised and orders sections. It takes nothing and holds nothing up.',
};

/** The sheet that is open, with a form under the item that is being changed. */
export function sheetPanel(at: Sheets, sheet: Sheet): TemplateResult {
  const base = sheet.kind === 'base';
  return html`<section aria-labelledby="sheet">
    <h2 id="sheet">${sheet.title}</h2>
    <p class="dim">${KINDS[sheet.kind]} Minutes are hands-on: usual, and what one in ten takes.</p>
    ${headPanel(at, sheet)}
    ${
      base || sheet.items.length > 0
        ? table(at, sheet, base ? 'What it asks for' : 'What it adds', sheet.items, true)
        : nothing
    }
    ${
      at.open === '+'
        ? itemForm({
            sheet,
            key: '',
            item: {},
            own: true,
            places: places(at),
            put: (...edits) => at.put(...edits),
            leave: () => at.toggle('+'),
          })
        : html`<div class="row">
            <button @click=${() => at.toggle('+')}>Add an item</button>
          </div>`
    }
    ${
      sheet.changes.length > 0
        ? table(at, sheet, 'What it changes of items that it finds', sheet.changes, false)
        : nothing
    }
    ${base || sheet.kind === 'personal' ? nothing : taken(at, sheet)}
    <details>
      <summary>As a file, with the lines that problems name</summary>
      <pre tabindex="0" role="region" aria-label="the sheet as a file">${numbered(sheet.text)}</pre>
    </details>
  </section>`;
}

function places(at: Sheets): readonly string[] {
  return at.overview?.places ?? [];
}

function numbered(text: string): string {
  return text
    .trimEnd()
    .split('\n')
    .map((line, i) => `${String(i + 1).padStart(4)}  ${line}`)
    .join('\n');
}

function table(
  at: Sheets,
  sheet: Sheet,
  title: string,
  items: readonly Fields[],
  own: boolean,
): TemplateResult {
  let section = '';
  return html`<table class="items">
    <caption>
      <h3>${title}</h3>
    </caption>
    <thead>
      <tr>
        <th scope="col">item</th>
        <th scope="col">who</th>
        <th scope="col" class="number">minutes</th>
        <th scope="col">holds up</th>
        <th scope="col"><span class="vh">what to do</span></th>
      </tr>
    </thead>
    <tbody>
      ${items.map((item) => {
        const key = String(item['key']);
        const head = sectionOf(key) === section ? nothing : sectionHead(sectionOf(key));
        section = sectionOf(key);
        return html`${head}${line(at, sheet, item, own)}`;
      })}
    </tbody>
  </table>`;
}

function sectionHead(section: string): TemplateResult {
  return html`<tr class="section">
    <th scope="rowgroup" colspan="5">${sectionName(section as Section)}</th>
  </tr>`;
}

function line(at: Sheets, sheet: Sheet, item: Fields, own: boolean): TemplateResult {
  const key = String(item['key']);
  const form = formOf(item);
  const open = at.open === key;
  const desk = form.desk || sheet.list.find((one) => one.key === key)?.desk || key;
  return html`<tr class=${open ? 'open' : ''}>
      <th scope="row">
        ${desk}<small
          >${[key, item['core'] === true ? 'never left out' : '', standsFor(item)].filter(Boolean).join(' · ')}</small
        >
      </th>
      <td>${form.who}</td>
      <td class="number">${hands(form.usual, form.oneInTen, form.waitsUsual)}</td>
      <td>${form.gates === '' ? '' : stepName(form.gates as Step)}</td>
      <td class="do">
        <button aria-expanded=${open} aria-label="change ${key}" @click=${() => at.toggle(key)}>
          Change
        </button>
      </td>
    </tr>
    ${
      open
        ? html`<tr class="open">
            <td colspan="5">
              ${itemForm({
                sheet,
                key,
                item,
                own,
                places: places(at),
                put: (...edits) => at.put(...edits),
                leave: () => at.toggle(key),
              })}
              ${own ? nothing : putBack(at, sheet, key)}
            </td>
          </tr>`
        : nothing
    }`;
}

function hands(usual: string, oneInTen: string, waits: string): string {
  if (usual === '') return '';
  const then = waits === '' ? '' : ` + ${minutes(Number(waits))} waiting`;
  return `${minutes(Number(usual))} (${minutes(Number(oneInTen))})${then}`;
}

function putBack(at: Sheets, sheet: Sheet, key: string): TemplateResult {
  return html`<div class="row">
    <button @click=${() => at.put({ does: 'put-back', sheet: sheet.name, key })}>
      Leave it as it is found
    </button>
  </div>`;
}

/** What an addition takes away, and what of the rest of the list it could change or take. */
function taken(at: Sheets, sheet: Sheet): TemplateResult {
  const others = found(sheet);
  const chosen = others.some((one) => one.key === at.chosen) ? at.chosen : others[0]?.key;
  const open = at.open === `?${chosen ?? ''}`;
  return html`<h3>What it takes away</h3>
    ${
      sheet.takes.length === 0
        ? html`<p>Nothing.</p>`
        : html`<ul class="plain">
            ${sheet.takes.map(
              (key) =>
                html`<li class="undo row">
                  ${key}<button
                    aria-label="Put it back: ${key}"
                    @click=${() => at.put({ does: 'put-back', sheet: sheet.name, key })}
                  >
                    Put it back
                  </button>
                </li>`,
            )}
          </ul>`
    }
    ${
      chosen === undefined
        ? nothing
        : html`<div class="row">
              <label
                >an item that it finds on the list
                <select @change=${(e: Event) => at.choose((e.target as HTMLSelectElement).value)}>
                  ${others.map(
                    (one) =>
                      html`<option value=${one.key} ?selected=${one.key === chosen}>
                        ${one.key}: ${one.desk}
                      </option>`,
                  )}
                </select></label
              >
              <button aria-expanded=${open} @click=${() => at.toggle(`?${chosen}`)}>
                Change it
              </button>
              ${
                others.some((one) => one.key === chosen && one.core)
                  ? html`<span>It may never be left out.</span>`
                  : html`<button
                      @click=${() => at.put({ does: 'leave-out', sheet: sheet.name, key: chosen })}
                    >
                      Take it away
                    </button>`
              }
            </div>
            ${
              open
                ? itemForm({
                    sheet,
                    key: chosen,
                    item: {},
                    own: false,
                    places: places(at),
                    put: (...edits) => at.put(...edits),
                    leave: () => at.toggle(at.open ?? ''),
                  })
                : nothing
            }`
    }`;
}
