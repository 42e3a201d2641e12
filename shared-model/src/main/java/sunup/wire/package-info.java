/** What goes over the socket between server and screens. The pages' types are generated from it. */
package sunup.wire;
