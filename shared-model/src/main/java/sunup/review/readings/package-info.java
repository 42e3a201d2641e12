/** Readings of a room's machine over the last mornings, and whether one of them changes slowly. */
package sunup.review.readings;
