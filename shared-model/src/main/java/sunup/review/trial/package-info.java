/**
 * The board on trial: what it said before each start against what came, beside two plain ways to
 * say it. REVIEW.md beside this module defines every number.
 */
package sunup.review.trial;
