import { css } from 'lit';

/** Drugs: labels on the left, scanning and counting on the right. */
export const drugsStyle = css`
  .drugs {
    flex: 1;
    min-height: 0;
    display: flex;
    flex-direction: column;
    gap: 8px;
  }
  .drugs .head {
    flex: none;
    display: flex;
    gap: 8px;
    align-items: center;
  }
  .drugs .head h2 {
    flex: 1;
    min-width: 0;
    font-size: 25px;
    line-height: 1.1;
  }
  .drugs small {
    display: block;
    font-size: 17px;
    font-weight: 400;
    color: var(--dim);
  }
  .drugs .both {
    flex: 1;
    min-height: 0;
    display: grid;
    grid-template-columns: minmax(0, 1fr) 430px;
    gap: 16px;
  }
  .drugs .list,
  .drugs .aside {
    min-width: 0;
    min-height: 0;
    display: flex;
    flex-direction: column;
    gap: 8px;
  }
  .drugs .list > .main {
    flex: none;
    min-height: 64px;
    font-size: 22px;
  }
  .drugs .labels {
    display: grid;
    grid-template-columns: repeat(auto-fill, minmax(230px, 1fr));
    gap: 8px;
  }
  .drugs .tile {
    display: grid;
    gap: 4px;
    padding: 6px;
    text-align: left;
  }
  .drugs .tile[aria-pressed='true'] {
    background: var(--deep);
  }
  .drugs .tile.lapsed {
    border-style: dashed;
  }
  .drugs .tile.drawn small {
    color: var(--ink);
    font-weight: 650;
  }
  .drug-label {
    --mm: 5.4px;
    display: block;
    width: calc(40 * var(--mm));
    max-width: 100%;
    height: calc(15 * var(--mm));
    border: 1px solid #000;
    border-radius: 3px;
    background: var(--label);
    color: #000;
    overflow: hidden;
    line-height: 1.1;
  }
  .drug-label.striped {
    background: repeating-linear-gradient(
      135deg,
      #fff 0 var(--mm),
      var(--label) var(--mm) calc(2 * var(--mm))
    );
  }
  .drug-label .plate {
    display: flex;
    flex-direction: column;
    justify-content: center;
    box-sizing: border-box;
    height: 100%;
    text-align: center;
    font-size: calc(2.6 * var(--mm));
    font-weight: 600;
  }
  /* A sixth is striped from above, and the name and three lines still fit below it. */
  .drug-label.striped .plate {
    margin: calc(2.4 * var(--mm)) 12% 0;
    padding-top: calc(0.5 * var(--mm));
    height: auto;
    min-height: calc(100% - 2.4 * var(--mm));
    background: var(--label);
    font-size: calc(2.2 * var(--mm));
    line-height: 1.05;
    white-space: nowrap;
  }
  /* Its capitals are 0.668 of it high: 2.5 mm, less only where a name would be cut. */
  .drug-label b {
    white-space: nowrap;
    font-size: calc(3.8 * var(--fit, 1) * var(--mm));
    font-weight: 750;
    line-height: 1;
  }
  .drug-label.reversed .plate {
    justify-content: flex-start;
    font-size: calc(2.2 * var(--mm));
  }
  .drug-label.reversed b {
    display: flex;
    align-items: center;
    justify-content: center;
    flex: 0 0 50%;
    background: #000;
    color: var(--label);
  }
  .drug-label.line b {
    border-bottom: calc(0.4 * var(--mm)) solid #000;
  }
  .drugs .card,
  .drugs .count,
  .drugs .old,
  .drugs .stop,
  .drugs .checked {
    border: 2px solid var(--rule);
    border-radius: 12px;
    padding: 8px 12px;
    background: var(--raised);
    display: grid;
    gap: 6px;
  }
  .drugs .stop {
    border: 3px solid var(--ember);
    font-weight: 650;
  }
  .drugs .stop form {
    display: grid;
    gap: 6px;
  }
  .drugs .old {
    grid-template-columns: repeat(auto-fill, minmax(320px, 1fr));
  }
  .drugs .old h3 {
    grid-column: 1 / -1;
  }
  .drugs .alike {
    color: var(--ink);
    font-weight: 650;
  }
  .drugs .scan {
    display: grid;
    grid-template-columns: 1fr auto;
    gap: 8px;
  }
  .drugs .do,
  .drugs .kinds {
    display: flex;
    flex-wrap: wrap;
    gap: 8px;
  }
  .drugs .kinds button {
    flex: 1;
    min-width: 0;
    padding: 0 6px;
  }
  .drugs [aria-pressed='true']:not(.tile) {
    background: var(--bar);
    color: var(--bar-ink);
  }
  .drugs .line {
    display: flex;
    gap: 8px;
    align-items: center;
    justify-content: space-between;
  }
  .drugs .line button[aria-label] {
    flex: none;
  }
  .drugs .struck {
    text-decoration: line-through;
  }
  .drugs .shown {
    display: flex;
    justify-content: space-between;
    align-items: baseline;
    border-bottom: 3px solid var(--ink);
    font-size: 30px;
    font-weight: 700;
  }
  .drugs .keys {
    display: grid;
    grid-template-columns: repeat(3, 1fr);
    gap: 6px;
  }
  .drugs .keys button {
    min-height: 50px;
  }
  .drugs .wrong {
    font-weight: 650;
  }
  .printed {
    display: none;
  }
  @media (orientation: portrait) {
    .drugs .both {
      grid-template-columns: minmax(0, 1fr);
      grid-template-rows: auto 1fr;
    }
    .drugs .both.counting .list {
      display: none;
    }
  }
  /* A label's page is as large as the label: nothing of the station may make a second one. */
  @media print {
    :host {
      display: block;
      height: auto;
      min-height: 0;
      overflow: visible;
      background: #fff;
    }
    header,
    main,
    footer,
    sunup-banner {
      display: none !important;
    }
    .printed {
      display: block;
    }
    .printed .drug-label {
      --mm: 1mm;
      border: 0;
      print-color-adjust: exact;
      -webkit-print-color-adjust: exact;
    }
  }
`;
