/** What comes in: the site's file, case lists, and the plan and preview made of them. */
package sunup.intake;
