/** The server as a whole: pages, the JSON API, health, and what is put together to make it. */
package sunup.http;
