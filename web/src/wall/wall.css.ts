import { css } from 'lit';

/** One unit (--u) is 1/1920 of the wall's width; --letter the smallest letters in units. */
export const wallStyles = css`
  :host {
    --u: calc(100vw / 1920);
    display: block;
    position: relative;
    height: 100vh;
    overflow: hidden;
    background: var(--ground);
    --banner-size: calc(max(var(--letter), 40) * var(--u));
  }
  sunup-banner {
    position: absolute;
    inset: 0 0 auto 0;
  }
  main {
    height: 100%;
    display: grid;
    grid-template-rows: auto minmax(0, 1fr) auto auto;
    font-size: calc(var(--letter) * var(--u));
    line-height: 1.2;
  }
  header {
    display: flex;
    align-items: center;
    gap: calc(28 * var(--u));
    padding: calc(8 * var(--u)) calc(36 * var(--u));
    height: calc(max(var(--letter) * 1.3, 76) * var(--u));
  }
  /* What does not fit beside the rest goes to a second line, which is not shown. */
  .facts {
    flex: 1;
    display: flex;
    flex-wrap: wrap;
    align-items: center;
    column-gap: calc(32 * var(--u));
    height: calc(max(var(--letter) * 1.3, 60) * var(--u));
    overflow: hidden;
  }
  .facts > * {
    height: calc(max(var(--letter) * 1.3, 60) * var(--u));
    line-height: calc(max(var(--letter) * 1.3, 60) * var(--u));
    white-space: nowrap;
  }
  h1 {
    margin: 0;
    font-size: calc(max(var(--letter), 44) * var(--u));
    font-weight: 700;
  }
  header .late {
    color: var(--ember);
    font-weight: 600;
  }
  .quiet,
  .old-figures {
    color: var(--sky);
    font-weight: 600;
  }
  .demo {
    height: auto;
    line-height: 1.2;
    padding: 0 0.4em;
    border: 3px dashed var(--edge);
    border-radius: 0.3em;
    color: var(--ink);
  }
  .place {
    color: var(--dim);
  }
  .clock {
    font-size: calc(max(var(--letter), 68) * var(--u));
    font-weight: 700;
    line-height: 1;
    font-variant-numeric: tabular-nums;
  }
  sunup-mark {
    --mark-size: calc(52 * var(--u));
    flex: none;
  }
  .sky {
    min-height: 0;
    overflow: hidden;
    contain: strict;
  }
  .needs {
    display: flex;
    flex-direction: column;
    min-height: 0;
    padding: calc(10 * var(--u)) calc(36 * var(--u)) 0;
  }
  h2 {
    margin: 0;
    font-size: 1em;
    font-weight: 500;
    color: var(--dim);
    height: calc(var(--heading) * var(--u));
    white-space: nowrap;
    overflow: hidden;
  }
  h2 b {
    font-weight: 600;
    color: var(--ink);
  }
  h2 .asks {
    color: var(--sky);
  }
  .lines {
    position: relative;
    display: flex;
    flex-direction: column;
    height: calc(var(--lines) * var(--u));
  }
  sunup-needs {
    flex: 1 0 100%;
  }
  .calm {
    flex: 1;
    display: flex;
    flex-direction: column;
    justify-content: center;
    align-items: center;
    text-align: center;
  }
  .calm h2 {
    height: auto;
    white-space: normal;
    font-size: calc(max(var(--letter) * 1.2, 84) * var(--u));
    font-weight: 700;
    color: var(--ink);
  }
  .calm p {
    margin: 0;
    font-size: calc(max(var(--letter), 46) * var(--u));
    color: var(--dim);
  }
  .legend {
    color: var(--dim);
  }
  .lines .legend {
    position: absolute;
    inset: auto 0 0 0;
  }
  .calm ~ .legend {
    position: static;
  }
  .legend p {
    margin: 0;
    height: 1.4em;
    display: flex;
    gap: 1.1em;
    align-items: center;
    white-space: nowrap;
  }
  .calm ~ .legend p {
    justify-content: center;
  }
  footer .legend p {
    height: 1.2em;
  }
  .legend span {
    display: inline-flex;
    align-items: center;
    gap: 0.4em;
  }
  .legend svg {
    width: 1.2em;
    height: 1.2em;
    overflow: visible;
  }
  .legend .line {
    stroke-width: 4;
  }
  /* Drawn at half its size, for finer stripes. */
  .legend .late .lens,
  .legend .stuck .lens {
    stroke-width: 8;
  }
  .legend .arrow {
    stroke: var(--dim);
    stroke-width: 4;
  }
  .legend .lit {
    display: inline;
    stroke: none;
  }
  footer {
    display: flex;
    justify-content: space-between;
    gap: 1em;
    padding: calc(4 * var(--u)) calc(36 * var(--u)) calc(10 * var(--u));
    color: var(--dim);
    white-space: nowrap;
    overflow: hidden;
  }
  footer strong {
    color: var(--amber);
    font-weight: 600;
  }
  /* Not live: everything that meant something loses its colour, and lies behind a grating. */
  .old {
    --sun: var(--dim);
    --amber: var(--dim);
    --ember: var(--dim);
    --sky: var(--dim);
    --ink: var(--dim);
    color: var(--ink);
    filter: grayscale(1);
  }
  .old::after {
    content: '';
    position: absolute;
    inset: 0;
    background: repeating-linear-gradient(
      135deg,
      transparent 0 60px,
      rgb(16 22 29 / 0.35) 60px 90px
    );
  }
  /* Nothing of it counts any more. */
  .old .now,
  .old .now-up,
  .old .now-word,
  .old .past,
  .old .halo,
  .old .lead,
  .old .beyond {
    display: none;
  }
`;
