import { css } from 'lit';

/** The review: paper to read and to print. */
export const reviewStyle = css`
  :host {
    display: block;
    max-width: 1180px;
    margin: 0 auto;
    padding: 20px 24px 60px;
    line-height: 1.4;
  }
  h1 {
    font-size: var(--step-4);
    margin: 0;
    line-height: 1.1;
  }
  h2 {
    font-size: var(--step-2);
    margin: 0 0 4px;
  }
  small,
  .key,
  .quiet {
    font-size: 14px;
    color: var(--dim);
  }
  a {
    color: var(--sky);
  }
  header {
    display: flex;
    align-items: end;
    gap: 24px;
    flex-wrap: wrap;
    border-bottom: 4px solid var(--ink);
    padding-bottom: 6px;
  }
  header p {
    margin: 0;
    flex: 1;
  }
  header .demo {
    border: 2px solid var(--ink);
    padding: 2px 8px;
  }
  .filters {
    display: flex;
    flex-wrap: wrap;
    gap: 10px 14px;
    align-items: end;
    padding: 12px 0;
    border-bottom: 1px solid var(--rule);
  }
  label {
    display: grid;
    gap: 2px;
    font-size: 14px;
    color: var(--dim);
  }
  select,
  input,
  button {
    font: inherit;
    font-size: 16px;
    min-height: 44px;
    padding: 0 10px;
    border: 1px solid var(--edge);
    border-radius: 6px;
    background: var(--raised);
    color: var(--ink);
  }
  button {
    cursor: pointer;
    font-weight: 650;
  }
  :is(select, input, button, summary, a, .scroll):focus-visible {
    outline: 3px solid var(--sky);
    outline-offset: 2px;
  }
  section {
    padding: 22px 0 8px;
    border-bottom: 1px solid var(--rule);
  }
  .with {
    display: flex;
    gap: 20px;
    align-items: end;
    flex-wrap: wrap;
    justify-content: space-between;
  }
  section p {
    margin: 4px 0;
    max-width: 78ch;
  }
  .withheld,
  .few {
    color: var(--dim);
  }
  .trouble {
    border-left: 6px solid var(--ember);
    padding-left: 12px;
  }
  .summary {
    display: grid;
    grid-template-columns: minmax(300px, 1fr) minmax(0, 1.4fr);
    gap: 12px 32px;
  }
  .headline {
    display: grid;
    grid-template-columns: auto 1fr;
    gap: 16px;
    align-items: center;
  }
  .headline strong {
    font-size: 76px;
    line-height: 1;
    white-space: nowrap;
  }
  .headline small {
    display: block;
  }
  dl {
    margin: 0;
    display: grid;
    grid-template-columns: repeat(3, 1fr);
    gap: 10px 20px;
  }
  dl div {
    border-top: 1px solid var(--rule);
    padding-top: 4px;
  }
  dt {
    font-size: 14px;
    color: var(--dim);
  }
  dd {
    margin: 0;
    font-size: 22px;
    font-weight: 650;
  }
  table {
    border-collapse: collapse;
    font-size: 15px;
  }
  caption {
    text-align: left;
    font-weight: 650;
    padding: 14px 0 4px;
  }
  th,
  td {
    text-align: left;
    padding: 4px 18px 4px 0;
    border-top: 1px solid var(--rule);
    vertical-align: middle;
    font-weight: 400;
  }
  thead th {
    font-size: 14px;
    color: var(--dim);
    border-top: 0;
  }
  .plains {
    display: grid;
    grid-template-columns: 1fr 1fr;
    gap: 0 36px;
    align-items: start;
  }
  .plains th {
    padding-right: 12px;
  }
  .graces th[scope='row'] {
    white-space: nowrap;
  }
  .scroll {
    overflow-x: auto;
    max-height: 60vh;
    overflow-y: auto;
  }
  details {
    margin: 8px 0;
  }
  summary {
    cursor: pointer;
    min-height: 32px;
    color: var(--sky);
  }
  .signals {
    margin: 4px 0;
    padding-left: 20px;
  }
  .how {
    margin: 2px 0;
    font-weight: 400;
    font-size: 14px;
  }
  .how p {
    max-width: 60ch;
  }
  .how summary {
    width: fit-content;
  }
  dd small {
    display: block;
    font-weight: 400;
  }
  .files {
    display: inline-flex;
    gap: 8px;
    margin: 4px 8px 4px 0;
  }
  .onlyprint {
    display: none;
  }
  svg.causes,
  svg.curve {
    display: block;
    width: 100%;
    height: auto;
  }
  svg text {
    font-size: 15px;
    fill: var(--ink);
    font-family: inherit;
  }
  .cause {
    fill: var(--sky);
  }
  .weak {
    fill: var(--ground);
    fill-opacity: 0.55;
  }
  .running {
    stroke: var(--ember);
    stroke-width: 3;
  }
  .rooms svg {
    width: 40px;
    height: 22px;
    vertical-align: middle;
  }
  .rooms rect {
    fill: var(--ember);
  }
  .rooms line {
    stroke: var(--ink);
    stroke-width: 2;
  }
  .trial {
    display: grid;
    grid-template-columns: minmax(260px, 380px) 1fr;
    gap: 28px;
  }
  .trial dl {
    grid-template-columns: 1fr;
  }
  .curve .grid {
    stroke: var(--rule);
  }
  .curve .right {
    stroke: var(--ink);
    stroke-dasharray: 7 4;
  }
  .curve .reach {
    stroke: var(--edge);
    stroke-width: 2;
  }
  .curve circle {
    fill: var(--sky);
  }
  svg.reach {
    width: 160px;
    height: 20px;
  }
  .reach line {
    stroke: var(--ink);
    stroke-width: 2;
  }
  .reach .none {
    stroke: var(--edge);
    stroke-dasharray: 2 3;
  }
  .reach circle {
    fill: var(--raised);
    stroke: var(--ink);
    stroke-width: 2;
  }
  .reach circle.differs {
    fill: var(--ink);
  }
  .reach circle.worse {
    fill: var(--ember);
    stroke: var(--ember);
  }
  strong.worse {
    color: var(--ember);
  }
  .compare strong,
  .compare small {
    display: block;
    font-weight: 400;
  }
  .compare strong.differs {
    font-weight: 650;
  }
  .busy {
    opacity: 0.55;
  }
  @media (max-width: 900px) {
    .summary,
    .plains,
    .trial {
      grid-template-columns: 1fr;
    }
    dl {
      grid-template-columns: repeat(2, 1fr);
    }
  }
  @media print {
    :host {
      padding: 0;
      max-width: none;
      font-size: 9pt;
      line-height: 1.25;
    }
    .filters,
    details,
    button,
    label,
    .noprint {
      display: none;
    }
    section {
      padding: 3px 0;
      break-inside: avoid;
    }
    h1 {
      font-size: 20pt;
    }
    h2 {
      font-size: 13pt;
    }
    small,
    .key,
    .quiet,
    dt,
    thead th {
      font-size: 8pt;
    }
    dl {
      grid-template-columns: repeat(3, 1fr);
      gap: 2px 20px;
    }
    dd {
      font-size: 12pt;
    }
    .summary,
    .plains {
      gap: 4px 16px;
    }
    .plains {
      grid-template-columns: 1fr 1fr;
    }
    .plains :is(th, td) {
      padding-right: 8px;
    }
    section p {
      max-width: none;
      margin: 1px 0;
    }
    caption {
      padding: 4px 0 2px;
    }
    th,
    td {
      padding: 1px 12px 1px 0;
    }
    .signals {
      columns: 2;
      font-size: 8pt;
    }
    .signals small {
      display: none;
    }
    .second,
    .first {
      break-before: page;
    }
    .onlyprint {
      display: block;
    }
    .defined {
      columns: 3;
      column-gap: 14px;
      margin: 0;
      padding: 0;
      list-style: none;
      font-size: 6.5pt;
      line-height: 1.2;
    }
    :host(:not([appendix])) .appendix {
      display: none;
    }
    .appendix {
      break-inside: auto;
    }
    tr {
      break-inside: avoid;
    }
    .headline strong {
      font-size: 30pt;
    }
    table {
      font-size: 8pt;
    }
    .scroll {
      max-height: none;
      overflow: visible;
    }
    svg.causes {
      max-height: 54mm;
    }
    .trial {
      grid-template-columns: 48mm 1fr;
      gap: 14px;
    }
    .trial dl {
      grid-template-columns: 1fr 1fr;
      gap: 2px 16px;
    }
    .trial dd {
      font-size: 10pt;
    }
    svg.curve {
      max-width: 48mm;
    }
  }
`;
