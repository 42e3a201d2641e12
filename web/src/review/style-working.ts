import { css } from 'lit';

/** How the page says that it is asking, and which figures are of the choice before. */
export const workingStyle = css`
  .working {
    margin: 0;
    padding: 4px 0;
    min-height: 24px;
    font-size: 14px;
    color: var(--dim);
    background: var(--ground);
  }
  /* In sight wherever the page is, but only so long: it would cover what has the focus. */
  .working.now {
    position: sticky;
    top: 0;
    color: var(--ink);
    font-weight: 650;
  }
  /* Without colour and with an edge: dimmed letters would be too pale to read. */
  .old {
    position: relative;
    filter: grayscale(1);
  }
  /* In the margin: nothing may jump because the page asks. */
  .old::before {
    content: '';
    position: absolute;
    inset: 22px auto 8px -20px;
    width: 8px;
    background: var(--edge);
  }
  .old :is(svg, sunup-chart) {
    opacity: 0.6;
  }
  h3 {
    font-size: var(--step-1);
    margin: 14px 0 4px;
  }
  .verdict {
    margin: 4px 0;
    padding-left: 20px;
    max-width: 78ch;
  }
  .earlier {
    margin: -4px 0;
    border: 1px solid var(--edge);
    border-radius: 6px;
    padding: 2px 8px;
    font-size: 14px;
    color: var(--dim);
  }
  .disagree {
    font-size: 15px;
  }
  @media print {
    .verdict {
      max-width: none;
      margin: 1px 0;
      padding-left: 12px;
      font-size: 7.5pt;
    }
    .disagree {
      font-size: 7.5pt;
    }
    h3 {
      font-size: 10pt;
      margin: 4px 0 1px;
    }
    .old svg {
      opacity: 1;
    }
  }
`;
