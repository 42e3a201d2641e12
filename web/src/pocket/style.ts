import { css } from 'lit';

export const pocketStyle = css`
  :host {
    min-height: 100vh;
    display: flex;
    flex-direction: column;
    font-size: 18px;
    --banner-size: 1.1rem;
  }
  header {
    display: flex;
    flex-wrap: wrap;
    align-items: center;
    gap: 4px 12px;
    padding: 10px 16px;
    background: var(--bar);
    color: var(--bar-ink);
  }
  header h1 {
    flex: 1 1 auto;
    font-size: 20px;
    line-height: 1.2;
  }
  /* A narrow phone has no room for it beside the name: then it stands below. */
  header .demo {
    order: 1;
  }
  .clock {
    font-size: 22px;
  }
  main {
    flex: 1;
    padding: 12px 16px;
    display: flex;
    flex-direction: column;
    gap: 10px;
  }
  h2 {
    margin-top: 8px;
    font-size: 18px;
  }
  .who,
  .do {
    display: flex;
    flex-wrap: wrap;
    gap: 10px;
  }
  .who {
    flex-direction: column;
  }
  .who button {
    text-align: left;
  }
  button {
    min-height: 56px;
    flex: 1;
  }
  .who button {
    flex: none;
  }
  .card {
    padding: 12px;
    border: 2px solid var(--edge);
    border-radius: 14px;
    background: var(--raised);
    display: flex;
    flex-direction: column;
    gap: 10px;
  }
  .card.asked {
    border-color: var(--sky);
    border-width: 3px;
  }
  small {
    display: block;
    font-size: 15px;
    font-weight: 400;
    color: var(--dim);
  }
  ol {
    list-style: none;
    margin: 0;
    padding: 0;
  }
  li {
    display: flex;
    align-items: baseline;
    gap: 14px;
    padding: 10px 0;
    border-bottom: 1px solid var(--rule);
  }
  li > b {
    min-width: 2em;
    font-size: 26px;
    line-height: 1;
  }
  li.waits {
    border-left: 6px solid var(--ember);
    padding-left: 10px;
  }
  .refused {
    margin: 8px 16px 0;
  }
  .told {
    display: flex;
    flex-wrap: wrap;
    align-items: center;
    gap: 4px 12px;
    font-size: 15px;
  }
  .told p {
    flex: 1 1 12em;
  }
  .told p:empty {
    display: none;
  }
  .told button {
    flex: 1 1 auto;
    min-height: 48px;
  }
  .empty {
    margin-top: 20vh;
    text-align: center;
  }
  footer {
    padding: 8px 16px 16px;
    font-size: 14px;
    color: var(--dim);
  }
  footer b {
    color: var(--ember);
  }
  .said {
    display: flex;
    align-items: center;
    justify-content: space-between;
    gap: 12px;
    font-size: 16px;
    color: var(--ink);
  }
  .said button {
    flex: none;
  }
`;
