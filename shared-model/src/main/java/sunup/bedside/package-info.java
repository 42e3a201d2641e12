/**
 * Figures for the bedside (sizes, cylinder minutes, ceilings, concentrations), each with formula,
 * source, range, refusal and caution, off until the site releases it. See BEDSIDE.md.
 */
package sunup.bedside;
