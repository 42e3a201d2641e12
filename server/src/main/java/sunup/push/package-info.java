/** Web Push: sealed, signed and sent to the browser maker's servers. Knows nothing of a morning. */
package sunup.push;
