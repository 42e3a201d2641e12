import { css } from 'lit';

/** The desk: dense, calm, on paper. */
export const deskStyle = css`
  :host {
    height: 100vh;
    min-height: 700px;
    display: flex;
    flex-direction: column;
    font-size: 16px;
    line-height: 1.3;
  }
  small {
    display: block;
    font-size: 14px;
    font-weight: 400;
    color: var(--dim);
  }
  h2 {
    font-size: 20px;
    margin: 4px 0;
  }
  h3 {
    font-size: 16px;
    font-weight: 650;
  }
  header {
    flex: none;
  }
  header button {
    background: #2b3945;
    border-color: #71828f;
    color: var(--bar-ink);
  }
  header button:hover {
    background: #3a4a58;
  }
  header .uncounted {
    margin: 0;
    max-width: 260px;
    color: #f6d978;
    font-weight: 650;
  }
  header button.first {
    background: #f6d978;
    border-color: #f6d978;
    color: #10161d;
  }
  main {
    flex: 1;
    min-height: 0;
    display: grid;
    grid-template-columns: minmax(0, 1fr) minmax(430px, 36%);
    gap: 16px;
    padding: 10px 20px 4px;
  }
  .rooms,
  .side {
    min-width: 0;
    min-height: 0;
    display: flex;
    flex-direction: column;
    gap: 8px;
  }
  .scroll {
    flex: 1;
    min-height: 0;
    overflow: auto;
  }
  .empty {
    padding: 80px 0;
    text-align: center;
    font-size: 22px;
    color: var(--dim);
  }
  table {
    width: 100%;
    border-collapse: collapse;
    table-layout: fixed;
  }
  thead th:nth-child(1) {
    width: 72px;
  }
  thead th:nth-child(2) {
    width: 142px;
  }
  thead th:nth-child(3) {
    width: 68px;
  }
  thead th:nth-child(4) {
    width: 106px;
  }
  thead th:nth-child(5) {
    width: 100px;
  }
  thead th {
    position: sticky;
    top: 0;
    background: var(--ground);
    text-align: left;
    font-size: 14px;
    font-weight: 600;
    color: var(--dim);
    padding: 4px 8px;
    z-index: 1;
  }
  tbody tr {
    border-top: 1px solid var(--rule);
  }
  tbody th,
  td {
    padding: 3px 8px;
    text-align: left;
    vertical-align: middle;
    line-height: 1.2;
  }
  tbody th button {
    width: 56px;
    padding: 0;
    font-size: 22px;
    font-weight: 780;
    border-color: var(--edge);
  }
  tr.current {
    background: var(--deep);
  }
  tr.current th button {
    background: var(--bar);
    color: var(--bar-ink);
  }
  .stands > div {
    display: flex;
    align-items: center;
  }
  .lens {
    flex: none;
  }
  .waits {
    font-size: 15px;
  }
  .waits span,
  .waits small {
    display: block;
    overflow: hidden;
    text-overflow: ellipsis;
    white-space: nowrap;
  }
  /* The time at its end is what matters: two lines rather than a cut. */
  .waits span {
    display: -webkit-box;
    -webkit-line-clamp: 2;
    -webkit-box-orient: vertical;
    white-space: normal;
  }
  .waits em {
    font-style: normal;
    font-weight: 650;
  }
  /* A room's standing as on the wall: shape first. */
  .lens {
    width: 26px;
    height: 20px;
    margin-right: 8px;
    border: 3px solid var(--ink);
    border-radius: 50%;
  }
  .lens.ready {
    background: #e0b92f;
    border-color: #8a6d1e;
    width: 22px;
    height: 22px;
    margin-right: 12px;
  }
  .lens.tight {
    background: linear-gradient(0deg, var(--amber) 50%, transparent 50%);
    border-color: var(--amber);
  }
  .lens.late {
    border-color: var(--ember);
    background: repeating-linear-gradient(45deg, var(--ember) 0 3px, transparent 3px 7px);
  }
  .lens.stuck {
    border-color: var(--ember);
    border-radius: 2px;
    height: 8px;
    background: var(--ember);
  }
  .lens.unheard {
    border-style: dashed;
    border-color: var(--sky);
  }
  .lens.agreed {
    border-style: double;
  }
  .lens.started {
    height: 0;
    border-width: 0 0 4px;
    border-radius: 0;
  }
  .lens.none {
    visibility: hidden;
  }
  nav {
    flex: none;
    display: flex;
    flex-wrap: wrap;
    gap: 4px;
  }
  nav button {
    flex: auto;
    padding: 0 7px;
    font-size: 15px;
    white-space: nowrap;
    border-color: var(--edge);
  }
  nav button[aria-pressed='true'] {
    background: var(--bar);
    border-color: var(--bar);
    color: var(--bar-ink);
  }
  .panel {
    flex: 1;
    min-height: 0;
    overflow: auto;
    padding: 4px 6px 8px;
    border-top: 2px solid var(--rule);
    display: flex;
    flex-direction: column;
    gap: 6px;
  }
  .panel > * {
    flex: none;
  }
  .cards {
    display: flex;
    flex-direction: column;
    gap: 6px;
  }
  .card {
    border: 2px solid var(--rule);
    border-radius: 12px;
    background: var(--raised);
    padding: 8px 12px;
    display: flex;
    flex-direction: column;
    gap: 6px;
  }
  .card.ask,
  .card.late,
  .card.stuck,
  .card.help {
    border-left: 8px solid var(--ember);
  }
  .card.tight {
    border-left: 8px solid var(--amber);
  }
  .card.sign {
    flex-flow: row wrap;
    align-items: center;
    border-left: 8px dotted var(--amber);
  }
  .card.sign > p {
    flex: 1 1 12em;
  }
  .card.sign > form {
    flex: 1 1 100%;
  }
  .card.on-it {
    border-left: 8px solid var(--sky);
  }
  .card p b:first-child {
    font-size: 20px;
    margin-right: 6px;
  }
  .card .plus {
    color: var(--ember);
    margin-right: 6px;
  }
  .card form {
    display: flex;
    flex-direction: column;
    gap: 6px;
  }
  .do {
    display: flex;
    flex-wrap: wrap;
    gap: 6px;
    align-items: center;
  }
  .do:empty {
    display: none;
  }
  .do input.time {
    width: 92px;
  }
  .do input.text,
  form > input.text {
    flex: 1;
    min-width: 160px;
  }
  .do button {
    padding: 0 12px;
  }
  .check {
    display: flex;
    align-items: center;
    gap: 8px;
    min-height: 48px;
  }
  .check input {
    width: 48px;
    height: 48px;
    margin: 0;
  }
  .line {
    display: flex;
    align-items: center;
    gap: 10px;
    padding: 2px 0;
    border-bottom: 1px solid var(--rule);
  }
  .grow {
    flex: 1;
    min-width: 0;
  }
  .mark {
    width: 18px;
    height: 18px;
  }
  .mark.left-out {
    height: 0;
  }
  .shares,
  .open,
  .problems {
    list-style: none;
    margin: 0;
    padding: 0;
  }
  .shares li {
    display: grid;
    grid-template-columns: minmax(0, 1fr) auto;
    align-items: center;
    gap: 8px;
    padding: 2px 0;
    border-bottom: 1px solid var(--rule);
  }
  .shares form {
    grid-column: 1 / 3;
    display: flex;
    flex-direction: column;
    gap: 6px;
  }
  .open li {
    display: flex;
    align-items: center;
    gap: 10px;
    padding: 3px 0;
  }
  .problems li {
    padding: 3px 0;
  }
  label {
    font-weight: 600;
  }
  label.file input {
    padding: 8px;
    max-width: 230px;
  }
  textarea {
    width: 100%;
    padding: 8px 12px;
    font-family: ui-monospace, monospace;
    font-size: 15px;
  }
  .log {
    flex: none;
    border-top: 2px solid var(--rule);
    padding-top: 6px;
  }
  .log p {
    display: flex;
    justify-content: space-between;
    gap: 12px;
    font-size: 15px;
  }
  .log p.refused {
    border: 0;
    background: none;
    padding: 0;
    color: var(--ember);
  }
  .log button {
    width: 100%;
    margin-top: 4px;
  }
  .refused {
    margin: 8px 20px 0;
  }
  .log .refused {
    margin: 0;
  }
  footer {
    flex: none;
    display: flex;
    flex-wrap: wrap;
    justify-content: space-between;
    gap: 0 16px;
    padding: 4px 20px 8px;
    font-size: 14px;
    color: var(--dim);
  }
  footer b {
    color: var(--ember);
  }
  @media (max-width: 1000px) {
    :host {
      height: auto;
    }
    main {
      grid-template-columns: minmax(0, 1fr);
    }
    .scroll,
    .panel {
      overflow: visible;
    }
    header {
      flex-wrap: wrap;
      gap: 8px 18px;
    }
  }
`;
