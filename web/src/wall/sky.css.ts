import { css } from 'lit';

/** How the horizon looks. Shape says it before colour does. */
export const skyStyles = css`
  svg {
    display: block;
    width: 100%;
    height: 100%;
  }
  text {
    font-family: var(--font);
    font-variant-numeric: tabular-nums;
  }
  .sky-high {
    stop-color: #141d27;
  }
  .sky-mid {
    stop-color: #26313c;
  }
  .sky-low {
    stop-color: #57483a;
  }
  .halo-in {
    stop-color: var(--sun);
    stop-opacity: 0.5;
  }
  .halo-out {
    stop-color: var(--sun);
    stop-opacity: 0;
  }
  .hatch-ground {
    fill: #3a1d14;
  }
  .hatch-stripe {
    fill: var(--ember);
  }
  .ground {
    fill: var(--deep);
  }
  .rule {
    stroke: #ffffff;
    stroke-opacity: 0.1;
    stroke-width: 2;
  }
  .mark {
    fill: var(--dim);
    text-anchor: end;
  }
  .target {
    fill: var(--ink);
    font-weight: 700;
    paint-order: stroke;
    stroke: var(--ground);
    stroke-width: 14px;
    stroke-linejoin: round;
  }
  .line {
    stroke: var(--ink);
    stroke-width: 5;
  }
  .past {
    fill: var(--ground);
    fill-opacity: 0.62;
    shape-rendering: crispEdges;
  }
  .now {
    fill: var(--sky);
  }
  .now-up {
    fill: none;
    stroke: var(--sky);
    stroke-width: 4;
    stroke-linecap: round;
  }
  .now-started-or-none .now,
  .now-started-or-none .now-up,
  .now-near .now-up {
    display: none;
  }
  .lens {
    fill: none;
    stroke: var(--sun);
    stroke-width: 5;
    transition:
      cy var(--slow) ease-in-out,
      ry var(--slow) ease-in-out;
  }
  .lit,
  .halo,
  .bar {
    display: none;
    transition: cy var(--slow) ease-in-out;
  }
  .still .lens,
  .still .lit,
  .still .halo {
    transition: none;
  }
  .shape-planned .lens {
    fill: var(--deep);
    stroke: var(--dim);
    stroke-width: 4;
  }
  .arrow[d='M0 0'],
  .lead[d='M0 0'] {
    display: none;
  }
  .arrow {
    fill: none;
    stroke: var(--sun);
    stroke-width: 6;
    stroke-linecap: round;
    stroke-linejoin: round;
  }
  .stroke {
    fill: #c3ccd2;
    stroke: var(--deep);
    stroke-width: 3;
    paint-order: stroke;
    display: none;
  }
  .shape-stroke .stroke {
    display: inline;
  }
  .shape-none .lens,
  .shape-stroke .lens,
  .shape-none .arrow {
    display: none;
  }
  .shape-stroke .arrow {
    stroke: var(--dim);
  }
  .shape-disc .lens {
    fill: var(--sun);
    stroke: none;
  }
  .ready.shape-disc .halo {
    display: inline;
  }
  .ahead.shape-lens .lens,
  .agreed.shape-lens .lens {
    fill: var(--sun);
    fill-opacity: 0.08;
  }
  .tight .lens {
    stroke: var(--amber);
  }
  .tight.shape-lens .lit {
    display: inline;
    fill: var(--amber);
    fill-opacity: 0.85;
    transition:
      cy var(--slow) ease-in-out,
      ry var(--slow) ease-in-out;
  }
  .tight .arrow {
    stroke: var(--amber);
  }
  .late .lens,
  .stuck .lens {
    stroke: var(--ember);
    fill: url(#hatch);
  }
  .late .arrow,
  .stuck .arrow {
    stroke: var(--ember);
  }
  .stuck.shape-lens .bar {
    display: inline;
    fill: var(--ink);
  }
  .unheard .lens {
    stroke: var(--sky);
    stroke-width: 5.5;
    stroke-dasharray: 1 12;
    stroke-linecap: round;
  }
  .unheard .arrow {
    stroke: var(--sky);
  }
  .beyond {
    fill: var(--sun);
    font-weight: 650;
    text-anchor: middle;
  }
  .tight .beyond {
    fill: var(--amber);
  }
  .late .beyond,
  .stuck .beyond {
    fill: var(--ember);
  }
  .unheard .beyond {
    fill: var(--sky);
  }
  .started .beyond {
    fill: var(--dim);
  }
  .lead {
    fill: none;
    stroke: var(--ember);
    stroke-width: 3;
  }
  .started .lead {
    stroke: var(--dim);
  }
  .now-word {
    fill: var(--sky);
    font-weight: 650;
    paint-order: stroke;
    stroke: var(--ground);
    stroke-width: 8px;
    stroke-linejoin: round;
  }
  .number {
    fill: var(--ink);
    font-weight: 750;
    text-anchor: middle;
  }
  .tick {
    fill: none;
    stroke: var(--dim);
    stroke-width: 3;
  }
  .number {
    paint-order: stroke;
    stroke: var(--deep);
    stroke-width: 10px;
    stroke-linejoin: round;
  }
  /* Without words under them the numbers say which rooms it is. */
  .late.bare .number,
  .stuck.bare .number {
    fill: var(--ember);
    text-decoration: underline;
    text-decoration-thickness: 0.09em;
    text-underline-offset: 0.08em;
  }
  .tight.bare .number {
    fill: var(--amber);
  }
  .unheard.bare .number {
    fill: var(--sky);
  }
  .word {
    fill: var(--sun);
    font-weight: 500;
    text-anchor: middle;
  }
  .tight .word {
    fill: var(--amber);
  }
  .late .word,
  .stuck .word {
    fill: var(--ember);
  }
  .unheard .word {
    fill: var(--sky);
  }
  .started .word,
  .none .word,
  .none .number {
    fill: var(--dim);
  }
`;
