/** A journal, and somebody who can write to it. */
package sunup.audit;
