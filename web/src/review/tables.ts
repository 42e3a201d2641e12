import { html, type TemplateResult } from 'lit';

export type Cell = string | number | undefined;
export type Rows = readonly (readonly Cell[])[];

/** A chart's numbers as a table, closed until somebody wants them, and as files. */
export function tableOf(name: string, head: readonly string[], rows: Rows): TemplateResult {
  return html`<details class="numbers">
    <summary>${name} as a table</summary>
    ${dataTable(`${name} as a table`, head, rows)} ${filesOf(name, head, rows)}
  </details>`;
}

/** Buttons that save a table. */
export function filesOf(name: string, head: readonly string[], rows: Rows): TemplateResult {
  const file = name.toLowerCase().replaceAll(/[^a-z0-9]+/g, '-');
  return html`<span class="files">
    <button
      type="button"
      aria-label="${name} as CSV"
      @click=${(): void => save(`${file}.csv`, 'text/csv', csvOf(head, rows))}
    >
      CSV
    </button>
    <button
      type="button"
      aria-label="${name} as JSON"
      @click=${(): void => save(`${file}.json`, 'application/json', jsonOf(head, rows))}
    >
      JSON
    </button>
  </span>`;
}

/** A table that the keyboard can move about in. */
export function dataTable(name: string, head: readonly string[], rows: Rows): TemplateResult {
  return html`<div class="scroll" tabindex="0" role="region" aria-label=${name}>
    <table>
      <thead>
        <tr>
          ${head.map((cell) => html`<th scope="col">${cell}</th>`)}
        </tr>
      </thead>
      <tbody>
        ${rows.map(
          ([first, ...rest]) =>
            html`<tr>
              <th scope="row">${first}</th>
              ${rest.map((cell) => html`<td>${cell ?? '–'}</td>`)}
            </tr>`,
        )}
      </tbody>
    </table>
  </div>`;
}

/** The table as RFC 4180 has it; no spreadsheet takes a cell for a formula. */
export function csvOf(head: readonly string[], rows: Rows): string {
  return [head, ...rows].map((row) => `${row.map(csvCell).join(',')}\r\n`).join('');
}

function csvCell(cell: Cell): string {
  const text = cell === undefined ? '' : String(cell);
  const safe = /^[=+\-@\t]/.test(text) && Number.isNaN(Number(text)) ? `'${text}` : text;
  return /[",\r\n]/.test(safe) ? `"${safe.replaceAll('"', '""')}"` : safe;
}

/** An object a row, by the table's own heads; what is withheld or not there is null. */
export function jsonOf(head: readonly string[], rows: Rows): string {
  const objects = rows.map((row) =>
    Object.fromEntries(head.map((name, i) => [name, row[i] ?? null])),
  );
  return `${JSON.stringify(objects, null, 1)}\n`;
}

function save(name: string, type: string, text: string): void {
  const link = document.createElement('a');
  link.href = URL.createObjectURL(new Blob([text], { type: `${type};charset=utf-8` }));
  link.download = name;
  link.click();
  // The browser has begun to save it by then.
  setTimeout(() => URL.revokeObjectURL(link.href), 60_000);
}
