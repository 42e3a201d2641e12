import { css } from 'lit';

/** The station: made to be touched with gloves, everything in one view at 1280x800 and 800x1280. */
export const stationStyle = css`
  :host {
    height: 100vh;
    min-height: 760px;
    display: flex;
    flex-direction: column;
    font-size: 21px;
    line-height: 1.25;
    overflow: hidden;
  }
  button {
    min-height: 56px;
    border-radius: 14px;
  }
  header {
    flex: none;
    display: flex;
    align-items: center;
    gap: 18px;
    min-height: 88px;
    padding: 8px 24px;
    background: var(--bar);
    color: var(--bar-ink);
  }
  header h1 {
    font-size: 60px;
    font-weight: 780;
    line-height: 1;
  }
  header .case {
    min-width: 0;
    flex: 1;
    font-size: 23px;
  }
  header .case small {
    display: block;
    color: var(--bar-dim);
    font-size: 18px;
  }
  header .case span {
    overflow: hidden;
    text-overflow: ellipsis;
    white-space: nowrap;
    display: block;
  }
  /* What the case is must be there to read: two lines before anything of it is left out. */
  header .case small {
    line-height: 1.1;
    display: -webkit-box;
    -webkit-line-clamp: 2;
    -webkit-box-orient: vertical;
    overflow: hidden;
  }
  header .proof {
    display: flex;
    flex-direction: column;
    align-items: flex-end;
    gap: 4px;
    max-width: 130px;
    text-align: right;
  }
  header button {
    background: #2b3945;
    border-color: #71828f;
    color: var(--bar-ink);
    text-align: left;
    line-height: 1.15;
  }
  header button small {
    display: block;
    font-weight: 400;
    font-size: 17px;
    color: var(--bar-dim);
  }
  header button:hover {
    background: #3a4a58;
  }
  header button.first {
    background: #f6d978;
    color: #10161d;
    border-color: #f6d978;
  }
  header button.first small {
    color: #10161d;
  }
  header .who {
    display: flex;
    gap: 12px;
  }
  header .when {
    text-align: right;
    font-size: 20px;
    color: var(--bar-dim);
    white-space: nowrap;
  }
  header .when b {
    display: block;
    font-size: 38px;
    line-height: 1.1;
    color: var(--bar-ink);
  }
  header .when b.started {
    font-size: 27px;
  }
  main {
    flex: 1;
    min-height: 0;
    display: grid;
    grid-template-columns: minmax(0, 1fr) 392px;
    gap: 16px;
    padding: 12px 24px 8px;
  }
  .left,
  .right {
    min-width: 0;
    min-height: 0;
    display: flex;
    flex-direction: column;
    gap: 8px;
  }
  .rows {
    flex: 1;
    min-height: 0;
    display: flex;
    gap: 8px;
  }
  .rows ol {
    list-style: none;
    margin: 0;
    padding: 0;
    flex: 1;
    min-width: 0;
    display: flex;
    flex-direction: column;
    gap: 6px;
  }
  .row {
    flex: 1;
    max-height: 92px;
    min-height: 60px;
    display: flex;
    align-items: stretch;
    gap: 8px;
    padding-right: 6px;
    border: 2px solid var(--rule);
    border-radius: 14px;
    background: var(--raised);
  }
  .row > button {
    align-self: center;
    white-space: nowrap;
  }
  .row .open {
    align-self: stretch;
    flex: 1;
    min-width: 0;
    min-height: 0;
    border: 0;
    background: transparent;
    display: grid;
    grid-template-columns: 50px minmax(0, 1fr);
    align-items: center;
    text-align: left;
    padding: 0 4px;
    font-weight: 400;
  }
  .idle {
    flex: 1;
    padding: 60px 24px;
    font-size: 28px;
    text-align: center;
  }
  .row .letter {
    font-size: 36px;
    font-weight: 780;
    text-align: center;
  }
  .row .letter .mark {
    vertical-align: middle;
  }
  .row b {
    font-size: 25px;
    font-weight: 650;
  }
  .row small {
    display: block;
    font-size: 18px;
    color: var(--dim);
    overflow: hidden;
    text-overflow: ellipsis;
    white-space: nowrap;
  }
  .row.good {
    background: var(--good-fill);
    border-color: var(--good-edge);
  }
  .row.fault {
    border-color: var(--ember);
    background: repeating-linear-gradient(
      45deg,
      var(--fault-fill) 0 10px,
      var(--fault-stripe) 10px 14px
    );
  }
  .row.fault small,
  .row.lapsed small {
    color: #8f2f10;
    font-weight: 600;
  }
  .row.lapsed {
    border-style: dashed;
    border-color: var(--ember);
  }
  .row.none {
    background: transparent;
    border-style: dotted;
  }
  .row.going {
    outline: 3px dotted var(--sky);
    outline-offset: -5px;
  }
  .rows.opened ol.sections {
    flex: none;
    width: 72px;
  }
  .rows.opened ol.sections .row {
    padding: 0;
  }
  .rows.opened ol.sections .open {
    grid-template-columns: 1fr;
    padding: 0;
  }
  .rows.opened .row.current {
    border-color: var(--ink);
    border-width: 3px;
  }
  .panel {
    flex: 1;
    min-width: 0;
    min-height: 0;
    display: flex;
    flex-direction: column;
    border: 3px solid var(--ink);
    border-radius: 14px;
    background: var(--raised);
    overflow: auto;
  }
  .item {
    flex: 1;
    min-height: 58px;
    max-height: 76px;
    display: flex;
    align-items: center;
    gap: 8px;
    padding: 0 6px 0 12px;
    border-bottom: 1px solid var(--rule);
  }
  .item.good {
    background: var(--good-fill);
    border-color: var(--good-edge);
  }
  .item.fault {
    background: var(--fault-fill);
  }
  .item .name {
    flex: 1;
    min-width: 0;
    font-size: 18px;
    line-height: 1.05;
  }
  .item .name span {
    display: -webkit-box;
    -webkit-line-clamp: 2;
    -webkit-box-orient: vertical;
    overflow: hidden;
  }
  .item .name small {
    display: block;
    color: var(--dim);
    font-size: 16px;
  }
  .item button {
    padding: 0 14px;
    font-size: 19px;
  }
  .item button[aria-pressed='true'] {
    background: var(--ember);
    border-color: var(--ember);
    color: #fffdf7;
  }
  .rest,
  .chain,
  .from-paper {
    flex: none;
  }
  .from-paper {
    display: flex;
    gap: 8px;
    align-items: center;
    padding-left: 12px;
    border: 3px dashed var(--ember);
    border-radius: 14px;
    font-weight: 650;
  }
  .from-paper span {
    flex: 1;
  }
  .rest.two button {
    flex: 1;
  }
  .rest button {
    width: 100%;
    font-size: 20px;
    overflow: hidden;
    text-overflow: ellipsis;
    white-space: nowrap;
  }
  .rest small {
    font-weight: 400;
  }
  .chain {
    display: grid;
    grid-template-columns: repeat(5, minmax(0, 1fr));
    gap: 6px;
  }
  .chain button {
    padding: 2px 6px;
    font-size: 19px;
    line-height: 1.1;
  }
  .chain button small {
    display: block;
    font-size: 16px;
    font-weight: 400;
  }
  .chain button.next {
    border-width: 3px;
  }
  .chain button:not(.next):not(.done) {
    border-color: var(--edge);
  }
  .chain button.done {
    background: var(--good-fill);
    border-color: var(--good-edge);
    color: var(--ink);
  }
  footer {
    flex: none;
    display: flex;
    align-items: baseline;
    justify-content: space-between;
    gap: 16px;
    padding: 0 24px 8px;
  }
  .caution {
    font-size: 16px;
    color: var(--dim);
  }
  @media (max-width: 1000px) {
    main {
      grid-template-columns: minmax(0, 1fr);
      grid-template-rows: auto minmax(0, 1fr);
    }
    header {
      display: grid;
      grid-template-columns: auto auto minmax(0, 1fr) auto auto;
      gap: 8px 14px;
    }
    header h1 {
      grid-area: 1 / 1;
    }
    header .case {
      grid-area: 1 / 2 / 2 / 4;
    }
    header .when {
      grid-area: 1 / 4;
    }
    header .who {
      grid-area: 2 / 1 / 3 / 4;
    }
    header .half {
      grid-area: 2 / 4 / 3 / 6;
    }
    header .proof {
      grid-area: 1 / 5;
    }
    .left .rows {
      flex: none;
      height: 458px;
    }
    .left .rows.opened {
      height: 552px;
    }
    /* What is asked of one item needs the room that its section takes. */
    .sheeted .left .rows.opened {
      display: none;
    }
    .right {
      display: grid;
      grid-template-columns: 1fr 1fr;
      grid-template-rows: auto minmax(0, 1fr) auto auto;
    }
    .right > * {
      grid-column: 1 / 3;
    }
    .right > .sheet {
      grid-row: 2 / 5;
    }
    .right > .waits {
      grid-row: 2;
      display: grid;
      grid-template-columns: 1fr 1fr;
      align-content: start;
    }
    .waits > :not(.w) {
      grid-column: 1 / 3;
    }
    .right > .undo {
      grid-row: 3;
    }
    .pad {
      grid-template-columns: 1fr 1fr;
      grid-template-rows: auto auto auto auto 1fr;
      column-gap: 16px;
    }
    .pad > * {
      grid-column: 1;
      align-self: start;
    }
    .pad > .keys {
      grid-area: 1 / 2 / 6 / 3;
    }
    .right > .help {
      grid-area: 4 / 1;
    }
    .right > .ready {
      grid-area: 4 / 2;
    }
    footer {
      display: block;
    }
  }
`;
