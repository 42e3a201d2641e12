import { css } from 'lit';

/** On the screen a preview; on paper black on white, a page a room. */
export const paperStyle = css`
  header {
    display: flex;
    gap: 18px;
    align-items: center;
    padding: 8px 24px;
    background: var(--bar);
    color: var(--bar-ink);
  }
  header p {
    flex: 1;
  }
  header button.main {
    min-height: 56px;
    background: #f6d978;
    border-color: #f6d978;
    color: #10161d;
  }
  header button[disabled] {
    background: #2b3945;
    border-color: #71828f;
    color: var(--bar-ink);
  }
  main {
    padding: 16px 24px;
  }
  .empty {
    padding: 60px 0;
    text-align: center;
    font-size: 24px;
  }
  article {
    max-width: 1000px;
    margin: 0 auto 40px;
  }
  h2 {
    display: flex;
    justify-content: space-between;
    align-items: baseline;
    gap: 20px;
    font-size: 26px;
  }
  h2 span {
    font-weight: 400;
    font-size: 18px;
  }
  .known {
    font-size: 15px;
    padding: 2px 0;
  }
  table {
    width: 100%;
    border-collapse: collapse;
    font-size: 15px;
    line-height: 1.15;
  }
  th,
  td {
    border: 1px solid var(--edge);
    padding: 2px 6px;
    text-align: left;
    font-weight: 400;
    vertical-align: top;
  }
  thead th,
  .section th {
    font-weight: 700;
  }
  th small {
    color: var(--dim);
    padding-left: 6px;
  }
  .write {
    min-width: 62px;
  }
  .step {
    white-space: nowrap;
  }
  .side + .side {
    margin-top: 24px;
  }
  @media print {
    .side + .side {
      margin-top: 0;
    }
    :host {
      background: #fff;
      color: #000;
    }
    .screen {
      display: none;
    }
    main {
      padding: 0;
    }
    article {
      max-width: none;
      margin: 0;
    }
    .side {
      break-after: page;
    }
    article:last-of-type .side:last-child {
      break-after: auto;
    }
    h2 {
      font-size: 15pt;
    }
    h2 span {
      font-size: 11pt;
    }
    table {
      font-size: 9pt;
      line-height: 1.05;
    }
    .known {
      font-size: 8pt;
      line-height: 1.1;
    }
    th,
    td {
      border-color: #000;
      padding: 0.5mm 1mm;
    }
    /* Room for a time written by hand. */
    tbody tr:not(.section) {
      height: 6.4mm;
    }
    .write {
      min-width: 16mm;
    }
    th small {
      color: #000;
    }
    tr {
      break-inside: avoid;
    }
    thead {
      display: table-header-group;
    }
  }
`;
