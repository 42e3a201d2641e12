package sunup.sheets;

import com.fasterxml.jackson.annotation.JsonInclude;

/**
 * How long an item stays good.
 *
 * @param minutes after so many minutes it has lapsed, or null if time alone does not end it
 * @param ends in words, what else ends it ("any part changed"), or null
 * @param source where the limit comes from: a section of the check values, a site rule
 */
@JsonInclude(JsonInclude.Include.NON_NULL)
public record Life(Integer minutes, String ends, String source) {}
