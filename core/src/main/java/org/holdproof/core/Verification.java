package org.holdproof.core;

import java.time.zone.ZoneRulesProvider;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.holdproof.core.assess.Assessor;
import org.holdproof.core.batch.Answers;
import org.holdproof.core.batch.BatchReader;
import org.holdproof.core.batch.BatchRecord;
import org.holdproof.core.batch.ColumnUse;
import org.holdproof.core.batch.LogSource;
import org.holdproof.core.course.ColumnMissingException;
import org.holdproof.core.course.CookLogs;
import org.holdproof.core.course.UnitDoubt;
import org.holdproof.core.input.NearestWord;
import org.holdproof.core.input.Place;
import org.holdproof.core.input.SourceFile;
import org.holdproof.core.input.UnreadableInputException;
import org.holdproof.core.log.Channel;
import org.holdproof.core.log.ProbeLog;
import org.holdproof.core.log.reading.LogReader;
import org.holdproof.core.rules.AuthorityProfile;
import org.holdproof.core.rules.RuleLibrary;
import org.holdproof.core.verdict.Assessment;

/**
 * A cook read and judged: its logs, its record, the rules, the verdict. Each file is read once; what a report seals are
 * the very bytes that were judged.
 */
public final class Verification {
    private final List<SourceFile> logFiles;
    private final SourceFile recordFile;
    private final RuleLibrary library;
    private final CookLogs logs;
    private final Assessment assessment;

    private Verification(
            List<SourceFile> logFiles,
            SourceFile recordFile,
            RuleLibrary library,
            CookLogs logs,
            Assessment assessment) {
        this.logFiles = List.copyOf(logFiles);
        this.recordFile = recordFile;
        this.library = library;
        this.logs = logs;
        this.assessment = assessment;
    }

    /**
     * Reads and judges a cook.
     *
     * @param logFiles its logs; where there are several, the record names each by its file name
     * @param recordFile its batch record (JSON)
     * @param library the rules to judge by, among them the profile of the record's authority
     * @throws UnreadableInputException if a file cannot be read, leaves open what must not be guessed, or does not go with
     *     the others; the message says what to change
     */
    public static Verification of(List<SourceFile> logFiles, SourceFile recordFile, RuleLibrary library)
            throws UnreadableInputException {
        return of(logFiles, recordFile, Answers.NONE, library);
    }

    /** As {@link #of(List, SourceFile, RuleLibrary)}, with answers written into the record first. */
    public static Verification of(
            List<SourceFile> logFiles, SourceFile recordFile, Answers answers, RuleLibrary library)
            throws UnreadableInputException {
        SourceFile answered = answers.writtenInto(recordFile);
        BatchRecord batch = BatchReader.parse(answered.name(), answered.bytes());
        AuthorityProfile authority = authority(answered.name(), batch, library);
        List<SourceFile> ordered = inOrder(logFiles, answered.name(), batch);
        CookLogs logs = read(ordered, answered.name(), batch);
        try {
            return new Verification(ordered, answered, library, logs, Assessor.assess(logs, authority, library));
        } catch (ColumnMissingException alreadyChecked) {
            throw new IllegalStateException(alreadyChecked);
        }
    }

    /**
     * The profile a record is to be judged by.
     *
     * @param recordName the record's file name, for messages
     * @throws UnreadableInputException if the library has no such profile; names the nearest
     */
    public static AuthorityProfile authority(String recordName, BatchRecord batch, RuleLibrary library)
            throws UnreadableInputException {
        Optional<AuthorityProfile> profile = library.profile(batch.authority());
        if (profile.isPresent()) {
            return profile.get();
        }
        List<String> known =
                library.profiles().stream().map(AuthorityProfile::id).toList();
        throw Place.file(recordName)
                .member("authority")
                .fault(
                        "'" + batch.authority() + "'",
                        "one of " + String.join(", ", known),
                        NearestWord.to(batch.authority(), known)
                                .map(near -> "Did you mean '" + near + "'?")
                                .orElse("Choose the profile whose rules govern."));
    }

    /**
     * Reads the logs of a record, each as the record says of it.
     *
     * @param logFiles one for each log of the record, in that order; see {@link #inOrder}
     * @param recordName the record's file name, for messages
     * @throws UnreadableInputException if one cannot be read, or lacks a column the record names
     */
    public static CookLogs read(List<SourceFile> logFiles, String recordName, BatchRecord batch)
            throws UnreadableInputException {
        List<ProbeLog> logs = new ArrayList<>();
        for (int i = 0; i < logFiles.size(); i++) {
            LogSource source = batch.logs().get(i);
            ProbeLog log = LogReader.read(logFiles.get(i), source.settings());
            for (ColumnUse use : source.columns()) {
                requireColumn(log, use, i, recordName, batch);
            }
            Optional<UnitDoubt> doubt = UnitDoubt.in(log, source, batch.stages());
            if (doubt.isPresent()) {
                throw doubted(log, doubt.get());
            }
            logs.add(log);
        }
        try {
            return CookLogs.of(batch, logs);
        } catch (ColumnMissingException alreadyChecked) {
            throw new IllegalStateException(alreadyChecked);
        }
    }

    private static UnreadableInputException doubted(ProbeLog log, UnitDoubt doubt) {
        return Place.file(log.fileName())
                .column(doubt.channel().column())
                .fault(
                        String.format(
                                Locale.ROOT,
                                "readings of '%s' about %.1f °C while the %s was set to %.1f °C; they are %s",
                                doubt.channel().name(),
                                doubt.readCelsius(),
                                doubt.stage().kind().title(),
                                doubt.setCelsius(),
                                doubt.meant()),
                        "readings in the unit the heading, the log or the record says",
                        "Correct the unit (\"unit\" or \"units\" of the batch record, --unit, or the heading), or the set"
                                + " point in the record.");
    }

    private static void requireColumn(ProbeLog log, ColumnUse use, int number, String recordName, BatchRecord batch)
            throws UnreadableInputException {
        if (log.channelNamed(use.heading()).isPresent()) {
            return;
        }
        Place record = Place.file(recordName);
        Place columns = batch.logs().get(number).file().isPresent()
                ? record.member("logs").item(number).member("columns")
                : record.member("columns");
        List<String> names = log.channels().stream().map(Channel::name).toList();
        throw columns.member(use.role().title())
                .fault(
                        "'" + use.heading() + "', a heading " + log.fileName() + " does not have",
                        "one of "
                                + String.join(
                                        ", ",
                                        names.stream()
                                                .map(name -> "'" + name + "'")
                                                .toList()),
                        NearestWord.to(use.heading(), names)
                                .map(near -> "Did you mean '" + near + "'?")
                                .orElse("Write the heading as the log prints it."));
    }

    /**
     * Puts logs into the order of the record that names them.
     *
     * @param logFiles the logs, in any order
     * @throws UnreadableInputException if one is missing, or one is not named in the record
     */
    public static List<SourceFile> inOrder(List<SourceFile> logFiles, String recordName, BatchRecord batch)
            throws UnreadableInputException {
        List<LogSource> sources = batch.logs();
        String given = logFiles.isEmpty()
                ? "no log"
                : String.join(", ", logFiles.stream().map(SourceFile::name).toList());
        if (sources.size() == 1 && sources.get(0).file().isEmpty()) {
            if (logFiles.size() == 1) {
                return List.copyOf(logFiles);
            }
            throw Place.file(recordName)
                    .fault(
                            logFiles.size() + " logs handed in (" + given + ") for a record of one",
                            logFiles.isEmpty() ? "the log of this batch" : "a list of the logs in the record",
                            logFiles.isEmpty()
                                    ? "Hand the log in."
                                    : "Say of each log its file, instrument and columns under \"logs\".");
        }
        List<SourceFile> ordered = new ArrayList<>();
        for (int i = 0; i < sources.size(); i++) {
            String name = sources.get(i).file().orElse("");
            List<SourceFile> named = logFiles.stream()
                    .filter(file -> file.name().equalsIgnoreCase(name))
                    .toList();
            if (named.size() != 1) {
                throw Place.file(recordName)
                        .member("logs")
                        .item(i)
                        .member("file")
                        .fault(
                                "'" + name + "', handed in " + (named.isEmpty() ? "not at all" : "more than once")
                                        + "; there " + (logFiles.size() == 1 ? "is " : "are ") + given,
                                "every log of the record once",
                                "Hand it in, or correct its name in the record.");
            }
            ordered.add(named.get(0));
        }
        for (SourceFile file : logFiles) {
            if (sources.stream().noneMatch(source -> source.file()
                    .map(name ->
                            name.toLowerCase(Locale.ROOT).equals(file.name().toLowerCase(Locale.ROOT)))
                    .orElse(false))) {
                throw Place.file(recordName)
                        .member("logs")
                        .fault(
                                "no word of " + file.name() + ", which was handed in",
                                "every log handed in",
                                "Add it to \"logs\", or leave the file out.");
            }
        }
        return ordered;
    }

    /** The logs as handed in, in the order of the record. */
    public List<SourceFile> logFiles() {
        return logFiles;
    }

    /** The batch record as handed in, or with the answers written in. */
    public SourceFile recordFile() {
        return recordFile;
    }

    public RuleLibrary library() {
        return library;
    }

    public BatchRecord batch() {
        return logs.batch();
    }

    /** The logs as read. */
    public CookLogs logs() {
        return logs;
    }

    /** All probes of the record side by side on the kitchen's clock. */
    public ProbeLog log() {
        return logs.joined();
    }

    public Assessment assessment() {
        return assessment;
    }

    /**
     * The version of the time-zone data (IANA) times are reckoned with here, such as {@code 2024b}: a later one may know
     * another offset for a kitchen's clock.
     */
    public static String zoneDataVersion() {
        return String.join(", ", ZoneRulesProvider.getVersions("UTC").keySet());
    }
}
