/** Amounts with their units, as figures and labels show them. */
package sunup.units;
