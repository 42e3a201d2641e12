import { css } from 'lit';

/** The station's right-hand side and the sheets that open there. */
export const sideStyle = css`
  .right h2 {
    font-size: 20px;
    font-weight: 600;
    color: var(--dim);
  }
  .waits {
    flex: 1;
    min-height: 0;
    overflow: hidden;
    display: flex;
    flex-direction: column;
    gap: 8px;
  }
  .w {
    border: 2px solid var(--rule);
    border-left: 8px solid var(--sky);
    border-radius: 12px;
    background: var(--raised);
    padding: 8px 14px;
    line-height: 1.2;
  }
  .w.over,
  .more:empty {
    display: none;
  }
  .w.ask {
    border-left-color: var(--ember);
  }
  .w small {
    display: block;
    color: var(--dim);
    font-size: 18px;
    margin-top: 2px;
  }
  .w .two {
    margin-top: 6px;
  }
  .w .two button {
    flex: 1;
  }
  .two {
    display: flex;
    gap: 8px;
  }
  .wide {
    flex: 1;
  }
  .undo {
    flex: none;
    min-height: 56px;
    display: flex;
    gap: 8px;
    align-items: center;
    font-size: 18px;
  }
  .undo span {
    flex: 1;
    min-width: 0;
    display: -webkit-box;
    -webkit-line-clamp: 2;
    -webkit-box-orient: vertical;
    overflow: hidden;
  }
  .help {
    flex: none;
  }
  .help button {
    flex: 1;
    line-height: 1.1;
    padding: 0 10px;
  }
  .help p,
  .emergency {
    font-size: 18px;
    color: var(--ember);
    font-weight: 650;
    text-align: center;
    padding-top: 4px;
  }
  .ready button {
    width: 100%;
    min-height: 68px;
    font-size: 25px;
    line-height: 1.1;
  }
  .ready p {
    padding-bottom: 6px;
    font-size: 18px;
  }
  .ready button small {
    display: block;
    font-size: 16px;
    font-weight: 400;
  }
  .foot {
    flex: none;
    font-size: 17px;
    color: var(--dim);
    white-space: nowrap;
  }
  .foot b {
    color: var(--ember);
  }
  .sheet {
    flex: 1;
    min-height: 0;
    display: flex;
    flex-direction: column;
    gap: 8px;
    border: 3px solid var(--ink);
    border-radius: 14px;
    background: var(--raised);
    padding: 12px;
    overflow: auto;
  }
  .sheet .head {
    display: flex;
    gap: 8px;
    align-items: flex-start;
  }
  .sheet .head h2 {
    flex: 1;
    color: var(--ink);
    font-size: 22px;
    line-height: 1.15;
  }
  .sheet .dim {
    font-size: 18px;
  }
  .right > .refused p {
    display: block;
  }
  .right > .refused button {
    width: 100%;
    margin-top: 6px;
  }
  .pad {
    display: grid;
    gap: 8px;
    grid-template-columns: minmax(0, 1fr);
  }
  .keys {
    display: grid;
    grid-template-columns: repeat(3, 1fr);
    gap: 8px;
  }
  .keys button {
    min-height: 60px;
    font-size: 27px;
  }
  .shown {
    font-size: 36px;
    font-weight: 700;
    border-bottom: 3px solid var(--ink);
    display: flex;
    justify-content: space-between;
    align-items: baseline;
    min-height: 48px;
  }
  .shown small {
    font-size: 21px;
    font-weight: 400;
    color: var(--dim);
  }
  .grid {
    display: grid;
    grid-template-columns: 1fr 1fr;
    gap: 8px;
  }
  .col {
    display: grid;
    gap: 8px;
  }
  .col > button,
  .col .two > button {
    text-align: left;
    line-height: 1.15;
  }
  .col button small {
    display: block;
    font-weight: 400;
    color: var(--dim);
    font-size: 17px;
  }
  .col button[aria-pressed='true'] {
    border-width: 4px;
    background: var(--good-fill);
  }
  .col button.main small {
    color: var(--bar-dim);
  }
  .free {
    display: flex;
    gap: 8px;
  }
  .free input {
    flex: 1;
    min-width: 0;
    min-height: 56px;
  }
  .wrong {
    color: var(--ember);
    font-weight: 600;
    font-size: 18px;
  }
  .plot {
    margin: 0;
    flex: none;
  }
  .plot svg {
    display: block;
    width: 100%;
    max-height: 120px;
  }
  .plot line,
  .plot polyline {
    fill: none;
    stroke: var(--dim);
    stroke-width: 2;
  }
  .plot .limit {
    stroke: var(--ember);
    stroke-dasharray: 8 6;
  }
  .plot circle {
    fill: var(--raised);
    stroke: var(--ink);
    stroke-width: 2;
  }
  .plot .now {
    fill: var(--ink);
  }
  .plot figcaption {
    font-size: 17px;
    line-height: 1.2;
    color: var(--dim);
  }
  .plot b {
    display: block;
    color: var(--ember);
  }
  @media (max-width: 1000px) {
    .sheet {
      gap: 6px;
      padding: 8px 12px;
    }
    .sheet .people {
      display: grid;
      grid-template-columns: 1fr 1fr;
      gap: 8px;
    }
  }
`;
