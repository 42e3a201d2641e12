/** Who a screen is, and which connections are taken. */
package sunup.access;
