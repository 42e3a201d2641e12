import { css } from 'lit';

/** The panel in which a copy is tried. */
export const copyStyle = css`
  /* Both forecasts of a copy, side by side. */
  .sides thead th {
    position: static;
    background: none;
    width: auto;
  }
  .sides thead th:first-child {
    width: 112px;
  }
  .sides tbody th,
  .sides td {
    vertical-align: top;
    padding: 5px 8px 5px 0;
  }
  .sides tbody th {
    font-size: 20px;
  }
`;
