/** A closed morning as the wall's audience saw it, to be played again. Names nobody. */
package sunup.review.replay;
