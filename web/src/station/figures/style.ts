import { css } from 'lit';

/** Bedside figures: everything of a figure in one view, with targets for gloved hands. */
export const figuresStyle = css`
  main.over {
    display: flex;
    flex-direction: column;
    gap: 8px;
  }
  .figures {
    flex: 1;
    min-height: 0;
    display: flex;
    flex-direction: column;
    gap: 8px;
  }
  .figures .head {
    flex: none;
    display: flex;
    gap: 8px;
    align-items: center;
  }
  .figures .head h2 {
    flex: 1;
    min-width: 0;
    font-size: 25px;
    line-height: 1.1;
  }
  .figures .head small {
    display: block;
    font-size: 18px;
    font-weight: 400;
    color: var(--dim);
  }
  .blanked {
    flex: none;
    border: 3px solid var(--ember);
    border-radius: 12px;
    padding: 6px 12px;
    font-weight: 650;
  }
  .tiles {
    display: grid;
    grid-template-columns: repeat(auto-fill, minmax(270px, 1fr));
    gap: 8px;
  }
  .tiles button {
    text-align: left;
    line-height: 1.1;
    font-size: 20px;
  }
  .off {
    font-size: 18px;
    color: var(--dim);
  }
  .figure {
    flex: 1;
    min-height: 0;
    display: grid;
    grid-template-columns: minmax(0, 1fr) 480px;
    gap: 16px;
  }
  .asked,
  .given {
    min-width: 0;
    min-height: 0;
    display: flex;
    flex-direction: column;
    gap: 8px;
  }
  .asked > .main {
    flex: none;
    min-height: 64px;
    font-size: 24px;
  }
  .inputs {
    display: grid;
    grid-template-columns: repeat(auto-fill, minmax(210px, 1fr));
    gap: 8px;
  }
  .tile {
    min-height: 60px;
    text-align: left;
    line-height: 1.15;
    padding: 4px 12px;
  }
  .tile small {
    display: block;
    font-size: 17px;
    font-weight: 400;
    color: var(--dim);
  }
  .tile b {
    font-size: 21px;
    white-space: pre-wrap;
  }
  .tile[aria-pressed='true'] {
    border-width: 4px;
    padding: 2px 10px;
    background: var(--good-fill);
  }
  .tile.wrong {
    border-color: var(--ember);
    border-style: dashed;
  }
  .about {
    margin: 0;
    min-height: 0;
    display: grid;
    grid-template-columns: auto minmax(0, 1fr);
    gap: 2px 12px;
    font-size: 17px;
    line-height: 1.2;
  }
  .about dt {
    color: var(--dim);
  }
  .about dd {
    margin: 0;
    overflow-wrap: anywhere;
  }
  .given {
    border: 3px solid var(--ink);
    border-radius: 14px;
    background: var(--raised);
    padding: 12px;
    overflow: auto;
  }
  .choices {
    display: grid;
    grid-template-columns: repeat(auto-fill, minmax(200px, 1fr));
    gap: 6px;
  }
  .choices button {
    font-size: 19px;
    line-height: 1.05;
    padding: 0 10px;
  }
  .choices button[aria-pressed='true'],
  .units button[aria-pressed='true'] {
    background: var(--bar);
    color: var(--bar-ink);
  }
  .fpad {
    display: flex;
    flex-direction: column;
    gap: 8px;
  }
  .units {
    display: grid;
    grid-template-columns: repeat(auto-fit, minmax(100px, 1fr));
    gap: 8px;
  }
  .units button {
    min-height: 64px;
    font-size: 23px;
    padding: 0 6px;
  }
  .reasons {
    border-left: 8px solid var(--ember);
    padding: 2px 10px;
    font-size: 18px;
    line-height: 1.2;
  }
  .reasons ul {
    margin: 0;
    padding-left: 20px;
  }
  .line {
    border-bottom: 2px solid var(--rule);
    padding: 4px 0;
    line-height: 1.15;
  }
  .line b {
    display: block;
    font-size: 26px;
  }
  .line small {
    font-size: 18px;
    color: var(--dim);
  }
  /* Nothing of a result may lie below the edge: the sum stands last. */
  .worked.many {
    display: grid;
    grid-template-columns: 1fr 1fr;
    gap: 0 16px;
  }
  .worked.many > :not(.line) {
    grid-column: 1 / -1;
  }
  .worked.many .line small {
    font-size: 16px;
  }
  .worked.many .line small:first-child {
    display: block;
  }
  .worked.many .line b {
    display: inline;
    margin-right: 6px;
    font-size: 21px;
  }
  .worked.many .line small:last-child {
    font-size: 15px;
  }
  .worked.many .line {
    padding: 2px 0;
  }
  .worked.many > .second {
    grid-column: auto;
    align-self: center;
    font-size: 17px;
    line-height: 1.1;
  }
  .worked.many .back {
    font-size: 16px;
  }
  .second {
    border-left: 8px solid var(--ember);
    padding: 4px 10px;
    font-weight: 650;
    font-size: 19px;
  }
  .back {
    font-size: 18px;
    line-height: 1.2;
    padding-top: 6px;
  }
  @media (max-width: 1000px) {
    .figure {
      grid-template-columns: minmax(0, 1fr);
      grid-template-rows: auto minmax(0, 1fr);
      gap: 10px;
    }
    .figure:has(.worked.many) .about {
      font-size: 15px;
    }
    .figure:has(.worked.many) .given {
      padding: 6px 12px;
    }
    .figure:has(.worked.many) .main {
      min-height: 56px;
    }
  }
`;
