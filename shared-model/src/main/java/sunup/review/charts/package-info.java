/**
 * Control charts and pictures of the review as data: centre, limits, signals and tables, ready for
 * any page to draw. REVIEW.md beside this module defines every number and names its source.
 */
package sunup.review.charts;
