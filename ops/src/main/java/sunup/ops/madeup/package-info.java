/** A made-up morning: what a board warms up with, and what its forecast is measured on. */
package sunup.ops.madeup;
