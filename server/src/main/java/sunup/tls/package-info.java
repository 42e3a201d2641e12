/**
 * What the server proves itself with: certificate files that somebody else renews, or a site root
 * made here at the first start.
 */
package sunup.tls;
