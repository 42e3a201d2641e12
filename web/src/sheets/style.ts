import { css } from 'lit';

/** The editor of sheets: paper with a margin that says what a change does. */
export const sheetsStyle = css`
  :host {
    min-height: 100vh;
    font-size: 16px;
    line-height: 1.35;
  }
  small {
    display: block;
    font-size: 14px;
    font-weight: 400;
    color: var(--dim);
  }
  h2 {
    font-size: 24px;
    margin: 0 0 4px;
  }
  h3 {
    font-size: 18px;
    margin: 18px 0 4px;
  }
  a {
    color: var(--sky);
  }
  header a {
    color: #7cc4ee;
  }
  main {
    display: grid;
    grid-template-columns: 210px minmax(0, 1fr) minmax(330px, 30%);
    gap: 24px;
    padding: 14px 20px 30px;
    align-items: start;
  }
  nav h2 {
    font-size: 14px;
    font-weight: 400;
    color: var(--dim);
    margin: 10px 0 2px;
  }
  nav button {
    display: block;
    width: 100%;
    min-height: 44px;
    margin: 3px 0;
    padding: 4px 12px;
    border-width: 1px;
    border-color: var(--rule);
    border-radius: 8px;
    text-align: left;
    line-height: 1.15;
  }
  nav button[aria-pressed='true'] {
    background: var(--bar);
    border-color: var(--bar);
    color: var(--bar-ink);
  }
  nav .new {
    margin-top: 16px;
  }
  nav .touched {
    border-left: 6px solid var(--sky);
  }
  table {
    width: 100%;
    border-collapse: collapse;
  }
  caption {
    text-align: left;
    padding-bottom: 6px;
  }
  th,
  td {
    text-align: left;
    vertical-align: middle;
    padding: 3px 10px 3px 0;
    border-top: 1px solid var(--rule);
    font-weight: 400;
  }
  thead th,
  .section th {
    font-size: 14px;
    color: var(--dim);
  }
  .section th {
    padding-top: 14px;
    font-weight: 650;
    color: var(--ink);
    text-transform: capitalize;
  }
  .number {
    text-align: right;
    white-space: nowrap;
  }
  td.do {
    text-align: right;
    padding-right: 0;
    white-space: nowrap;
  }
  .open > * {
    background: var(--deep);
  }
  td form {
    padding: 8px 10px 12px;
  }
  .items button,
  .row button {
    min-height: 44px;
    border-width: 1px;
    font-weight: 400;
  }
  .fields {
    display: grid;
    grid-template-columns: repeat(auto-fill, minmax(190px, 1fr));
    gap: 8px 14px;
    align-items: end;
  }
  .fields .wide {
    grid-column: span 2;
  }
  label {
    display: grid;
    gap: 2px;
    font-size: 14px;
    color: var(--dim);
  }
  label :is(input, select) {
    width: 100%;
    font-size: 16px;
    color: var(--ink);
  }
  h4 {
    font-size: 14px;
    font-weight: 650;
    margin: 12px 0 2px;
  }
  /* A band belongs to a number and words to a choice. */
  .when-number,
  .when-choice {
    display: none;
    margin-top: 8px;
  }
  form:has([name='evidence'] [value='number']:checked) .when-number,
  form:has([name='evidence'] [value='choice']:checked) .when-choice {
    display: grid;
  }
  .tick {
    display: flex;
    gap: 8px;
    align-items: center;
    min-height: 44px;
  }
  .tick input {
    width: 22px;
    height: 22px;
    flex: none;
  }
  form.head {
    background: var(--deep);
    padding: 8px 10px 12px;
  }
  fieldset {
    border: 1px solid var(--rule);
    margin: 8px 0;
    display: grid;
    grid-template-columns: repeat(auto-fill, minmax(190px, 1fr));
    gap: 0 14px;
  }
  legend {
    font-size: 14px;
    font-weight: 650;
  }
  .row {
    display: flex;
    flex-wrap: wrap;
    gap: 8px;
    align-items: center;
    margin: 8px 0;
  }
  .row label {
    flex: 1;
    min-width: 150px;
  }
  /* What a change does stays in sight however far down the item stands. */
  nav,
  aside {
    position: sticky;
    top: 0;
    max-height: 100vh;
    overflow-y: auto;
  }
  aside {
    border-left: 4px solid var(--ink);
    padding: 0 4px 20px 18px;
  }
  aside h3:first-of-type {
    margin-top: 0;
  }
  ul,
  ol {
    margin: 4px 0;
    padding-left: 20px;
  }
  li {
    margin: 2px 0;
    overflow-wrap: anywhere;
  }
  li.undo {
    display: flex;
    gap: 10px;
    justify-content: space-between;
    align-items: center;
  }
  ul.plain {
    padding: 0;
    list-style: none;
  }
  .wrong {
    border: 3px solid var(--ember);
    border-radius: 12px;
    background: var(--raised);
    padding: 6px 12px 8px;
    margin: 8px 0;
  }
  .wrong h3 {
    margin: 0;
    color: var(--ember);
  }
  .case {
    border-top: 1px solid var(--rule);
    padding: 4px 0;
  }
  .case b {
    margin-right: 6px;
  }
  .told {
    border-left: 6px solid var(--sky);
    padding: 4px 0 4px 12px;
    margin: 8px 0;
  }
  pre {
    max-height: 60vh;
    overflow: auto;
    font-size: 13px;
    line-height: 1.3;
    padding: 8px;
    background: var(--raised);
    border: 1px solid var(--rule);
  }
  summary {
    cursor: pointer;
    min-height: 44px;
    line-height: 44px;
    color: var(--sky);
  }
  footer {
    padding: 0 20px 16px;
    color: var(--dim);
    font-size: 14px;
  }
  @media (max-width: 1100px) {
    main {
      grid-template-columns: minmax(0, 1fr);
    }
    nav,
    aside {
      position: static;
      max-height: none;
    }
    nav {
      columns: 3;
    }
    aside {
      border-left: 0;
      border-top: 4px solid var(--ink);
      padding: 12px 0 0;
    }
  }
`;
