import { css } from 'lit';

/** The holding bay: rows of touches, read standing. */
export const holdingStyle = css`
  :host {
    height: 100vh;
    display: flex;
    flex-direction: column;
    font-size: 18px;
    line-height: 1.2;
  }
  header {
    display: flex;
    align-items: center;
    gap: 18px;
    padding: 12px 20px;
    background: var(--bar);
    color: var(--bar-ink);
  }
  header h1 {
    font-size: 32px;
    font-weight: 750;
  }
  header .dim {
    color: var(--bar-dim);
  }
  header .when {
    margin-left: auto;
    font-size: 32px;
    font-weight: 700;
  }
  main {
    position: relative;
    flex: 1;
    min-height: 0;
    overflow-y: auto;
    display: grid;
    grid-template-columns: minmax(0, 1fr);
    gap: 16px;
    padding: 8px 20px;
    align-items: start;
  }
  .scroll {
    overflow-x: auto;
    padding: 4px;
  }
  .empty {
    padding: 60px 0;
    text-align: center;
    font-size: 24px;
    color: var(--dim);
  }
  table {
    width: 100%;
    border-collapse: separate;
    border-spacing: 4px;
  }
  thead th {
    text-align: left;
    font-size: 16px;
    font-weight: 600;
    color: var(--dim);
    padding: 4px 8px;
    white-space: nowrap;
  }
  tbody th {
    text-align: left;
    font-weight: 400;
    white-space: nowrap;
    padding-right: 8px;
  }
  tbody th b {
    display: inline-block;
    min-width: 46px;
    font-size: 32px;
    font-weight: 780;
    vertical-align: middle;
  }
  tbody th span {
    display: inline-block;
    vertical-align: middle;
    font-weight: 650;
  }
  tbody th small {
    display: block;
    font-size: 16px;
    font-weight: 400;
    color: var(--dim);
  }
  td {
    padding: 0;
    height: 54px;
  }
  .cell {
    width: 100%;
    min-width: 84px;
    height: 100%;
    min-height: 54px;
    padding: 3px 8px;
    display: flex;
    align-items: center;
    gap: 7px;
    text-align: left;
    border-color: var(--edge);
    border-radius: 10px;
    font-weight: 600;
    line-height: 1.1;
    font-size: 17px;
  }
  .cell small {
    display: block;
    font-size: 16px;
    font-weight: 400;
  }
  td.more {
    width: 48px;
  }
  td.more button {
    padding: 0;
    width: 48px;
    border-color: var(--edge);
  }
  .cell .mark {
    width: 20px;
    height: 20px;
  }
  .cell .mark.left-out {
    height: 0;
  }
  .cell.good {
    background: var(--good-fill);
    border-color: var(--good-edge);
  }
  .cell.fault {
    background: var(--fault-fill);
    border-color: var(--ember);
    color: #8f2f10;
  }
  .cell.going {
    outline: 3px dotted var(--sky);
    outline-offset: -5px;
  }
  .also {
    min-width: 0;
  }
  tr.left th b {
    color: var(--dim);
  }
  .panel {
    position: fixed;
    right: 20px;
    top: 72px;
    width: 420px;
    z-index: 5;
    display: flex;
    flex-direction: column;
    gap: 10px;
    border: 3px solid var(--ink);
    border-radius: 14px;
    background: var(--raised);
    padding: 14px;
    max-height: calc(100vh - 92px);
    overflow: auto;
  }
  .panel .head {
    display: flex;
    gap: 8px;
    align-items: flex-start;
  }
  .panel .head h2 {
    flex: 1;
    font-size: 20px;
  }
  .panel h3 {
    font-size: 16px;
    font-weight: 600;
    color: var(--dim);
  }
  .panel .col button {
    text-align: left;
  }
  .panel button small {
    display: block;
    font-weight: 400;
    font-size: 16px;
  }
  .times {
    display: grid;
    grid-template-columns: 1fr 1fr;
    gap: 6px;
  }
  .times button {
    padding: 2px 8px;
  }
  .col {
    display: grid;
    gap: 6px;
  }
  .two,
  .free {
    display: flex;
    gap: 6px;
  }
  .two button {
    flex: 1;
  }
  .free input {
    flex: 1;
    min-width: 0;
  }
  .refused {
    margin: 8px 20px 0;
  }
  footer {
    flex: none;
    padding: 6px 20px 8px;
    background: var(--ground);
    border-top: 2px solid var(--rule);
  }
  .undo {
    min-height: 48px;
    display: flex;
    align-items: center;
    justify-content: space-between;
    gap: 12px;
  }
  .foot {
    display: flex;
    justify-content: space-between;
    gap: 16px;
    font-size: 16px;
    color: var(--dim);
  }
  .foot b {
    color: var(--ember);
  }
  @media (max-width: 1000px) {
    .panel {
      position: fixed;
      left: 20px;
      right: 20px;
      width: auto;
      bottom: 20px;
      top: auto;
      max-height: 70vh;
      z-index: 5;
    }
    .foot {
      flex-wrap: wrap;
    }
    thead {
      display: none;
    }
    tbody tr {
      display: grid;
      grid-template-columns: 124px repeat(4, minmax(0, 1fr)) 48px;
      gap: 4px;
      padding: 6px 0;
      border-bottom: 2px solid var(--rule);
    }
    tbody tr > th {
      grid-row: 1 / 4;
      white-space: normal;
    }
    td,
    .cell {
      height: 64px;
    }
    td.also {
      grid-area: 3 / 2 / 4 / 6;
      height: auto;
      display: flex;
      gap: 4px;
    }
    td.more {
      grid-area: 1 / 6;
    }
    table,
    tbody {
      display: block;
    }
  }
`;
