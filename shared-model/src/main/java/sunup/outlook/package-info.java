/**
 * From a morning's state to the forecast's input, and from its figures to standings, holdups in
 * words and the parts that screens show.
 */
package sunup.outlook;
