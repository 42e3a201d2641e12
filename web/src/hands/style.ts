import { css } from 'lit';

/** What the pages for hands share: controls, bands, states. Tokens come from the page's palette. */
export const shared = css`
  * {
    box-sizing: border-box;
  }
  :host {
    --good-fill: #fff4cf;
    --good-edge: #b8922a;
    --sun-fill: #e0b92f;
    --fault-fill: #fff1ea;
    --fault-stripe: #ffe3d6;
    --bar: #17212b;
    --bar-ink: #f4f1e8;
    --bar-dim: #b3c1cc;
    display: block;
    color: var(--ink);
    background: var(--ground);
    font-family: var(--font);
    font-variant-numeric: tabular-nums;
  }
  header {
    --edge: #71828f;
    --sun: #f6d978;
    --sky: #7cc4ee;
  }
  .old-figures {
    color: var(--sky);
    font-weight: 600;
  }
  header .demo {
    padding: 0 0.4em;
    border: 2px dashed var(--edge);
    border-radius: 0.3em;
    font-size: 17px;
    font-weight: 400;
    line-height: 1.2;
  }
  header sunup-mark {
    vertical-align: middle;
  }
  button,
  input,
  select,
  textarea {
    font: inherit;
    color: inherit;
  }
  button {
    min-height: 48px;
    min-width: 48px;
    padding: 0 16px;
    border: 2px solid var(--ink);
    border-radius: 12px;
    background: var(--raised);
    font-weight: 600;
    cursor: pointer;
    touch-action: manipulation;
  }
  button:hover {
    background: var(--deep);
  }
  button:active {
    transform: translateY(1px);
  }
  button.main {
    background: var(--bar);
    border-color: var(--bar);
    color: var(--bar-ink);
  }
  button.main:hover {
    background: #2b3945;
  }
  button.soft {
    border-style: dashed;
  }
  button[disabled] {
    color: var(--dim);
    border-color: var(--rule);
    background: var(--ground);
    cursor: default;
  }
  :focus-visible {
    outline: 4px solid var(--sky);
    outline-offset: 2px;
  }
  input,
  select,
  textarea {
    min-height: 48px;
    padding: 0 12px;
    border: 2px solid var(--edge);
    border-radius: 10px;
    background: var(--raised);
  }
  select {
    max-width: 100%;
    text-overflow: ellipsis;
  }
  h1,
  h2,
  h3,
  p {
    margin: 0;
  }
  .refused {
    border: 3px solid var(--ember);
    border-radius: 12px;
    background: var(--raised);
    padding: 8px 12px;
  }
  .refused p {
    display: flex;
    gap: 10px;
    align-items: center;
    justify-content: space-between;
    margin: 4px 0;
  }
  .refused button {
    flex: none;
  }
  .dim {
    color: var(--dim);
  }
  .vh {
    position: absolute;
    width: 1px;
    height: 1px;
    overflow: hidden;
    clip-path: inset(50%);
    white-space: nowrap;
  }
  /* The mark of an item or section: shape first, colour second. */
  .mark {
    display: inline-block;
    width: 24px;
    height: 24px;
    flex: none;
    border: 3px solid var(--ink);
    border-radius: 50%;
    background: transparent;
  }
  .mark.good {
    background: var(--sun-fill);
    border-color: var(--good-edge);
  }
  .mark.hand,
  .mark.in-hand {
    background: linear-gradient(90deg, var(--ink) 50%, transparent 50%);
  }
  .mark.fault {
    border-radius: 4px;
    border-color: var(--ember);
    background: repeating-linear-gradient(45deg, var(--ember) 0 3px, transparent 3px 7px);
  }
  .mark.lapsed {
    border-style: dashed;
    border-color: var(--ember);
  }
  .mark.left-out {
    height: 0;
    border-width: 0 0 3px;
    border-radius: 0;
    border-color: var(--dim);
  }
  .mark.none {
    visibility: hidden;
  }
  @media (prefers-reduced-motion: no-preference) {
    .rise {
      transition:
        background-color 400ms ease-out,
        border-color 400ms ease-out;
    }
  }
`;

/** The bar at the top of pages that are read at a desk. */
export const headStyle = css`
  header {
    display: flex;
    align-items: center;
    gap: 22px;
    padding: 8px 20px;
    min-height: 64px;
    background: var(--bar);
    color: var(--bar-ink);
  }
  header h1 {
    font-size: 28px;
  }
  header small {
    color: var(--bar-dim);
  }
  header .gap {
    flex: 1;
  }
  header .clock {
    font-size: 30px;
  }
`;
