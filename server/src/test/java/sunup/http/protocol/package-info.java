/** The protocol documents, made of the code's records. */
package sunup.http.protocol;
