/**
 * Whole invented mornings, one after another: what must hold of each, and how the forecasts did.
 */
package sunup.ops.trial;
