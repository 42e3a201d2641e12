/** A copy of the morning with something changed, beside the morning as it is. */
package sunup.trying;
