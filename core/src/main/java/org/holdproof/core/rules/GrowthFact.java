package org.holdproof.core.rules;

/**
 * Something published about growth and death in slow cooks, to be told beside a figure.
 *
 * @param topic what it is about, in a word or two
 * @param statement the fact, in our words
 */
public record GrowthFact(String id, String topic, String statement, Citation citation) implements Rule {
    @Override
    public String title() {
        return topic;
    }
}
