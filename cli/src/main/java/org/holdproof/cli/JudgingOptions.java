package org.holdproof.cli;

import java.io.IOException;
import java.nio.file.Path;
import java.util.Optional;
import java.util.stream.Collectors;
import org.holdproof.core.batch.Answers;
import org.holdproof.core.input.UnreadableInputException;
import org.holdproof.core.rules.AuthorityProfile;
import org.holdproof.core.rules.RuleLibrary;
import picocli.CommandLine.Option;

/** What a log is judged by, and what it may leave open. */
final class JudgingOptions {
    @Option(
            names = "--authority",
            paramLabel = "NAME",
            description = "Judge by this authority profile instead of the record's (list: holdproof tables).")
    private Optional<String> authority = Optional.empty();

    @Option(
            names = "--tables",
            paramLabel = "DIR",
            description = "Lay the site's own tables in DIR (an approved, validated process) over the built-in ones.")
    private Optional<Path> tables = Optional.empty();

    @Option(
            names = "--unit",
            paramLabel = "C|F",
            description = "The log's temperatures are in °C or °F, where the file does not say.")
    private Optional<LogUnit> unit = Optional.empty();

    @Option(
            names = "--dates",
            paramLabel = "dmy|mdy|ymd",
            description = "The order of day, month and year in the log, where the file does not settle it.")
    private Optional<LogDates> dates = Optional.empty();

    /** As {@code --unit} is written. */
    enum LogUnit {
        C,
        F
    }

    /** As {@code --dates} is written. */
    enum LogDates {
        dmy,
        mdy,
        ymd
    }

    /** The tables to judge by, which hold the authority asked for. */
    RuleLibrary library() throws Refusal, IOException, UnreadableInputException {
        RuleLibrary library = tables.isPresent() ? RuleLibrary.withSite(tables.get()) : RuleLibrary.builtIn();
        if (authority.isPresent() && library.profile(authority.get()).isEmpty()) {
            String known = library.profiles().stream().map(AuthorityProfile::id).collect(Collectors.joining(", "));
            throw Refusal.usage("--authority " + authority.get() + ": no such profile; there are " + known);
        }
        return library;
    }

    /** What goes into the batch record from the command line. */
    Answers answers() {
        return new Answers(authority, unit.map(LogUnit::name), dates.map(LogDates::name));
    }
}
