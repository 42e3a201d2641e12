/** JSON of the model: strict in, no nulls out. */
package sunup.codec;
