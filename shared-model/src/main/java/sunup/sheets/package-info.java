/** Versioned lists of items as validated data, and how a case's list is composed from them. */
package sunup.sheets;
