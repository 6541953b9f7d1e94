package org.ebbwatch.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.ebbwatch.evidence.Verification;
import org.ebbwatch.evidence.Verification.Account;
import org.ebbwatch.evidence.Verification.Again;
import org.ebbwatch.evidence.Verification.Damaged;
import org.ebbwatch.evidence.Verification.Judged;
import org.ebbwatch.evidence.Verification.Unreadable;
import org.ebbwatch.evidence.signature.SignerKey;

/** What came of verifying a file, in lines for a person and as an exit code. */
final class VerificationText {
    private static final int LINE_MOST = 400;

    private VerificationText() {}

    /** See {@link VerifyCommand}. */
    static int exitCode(Verification verification, Optional<SignerKey> known) {
        if (verification instanceof Judged judged) {
            if (known.isPresent() && !known.equals(judged.signer()) && !isOtherwise(judged)) {
                return 5;
            }
            if (!judged.isSameJudge()) {
                return 4;
            }
            return judged.again() instanceof Again.Same ? 0 : 1;
        }
        return verification instanceof Damaged ? 1 : 3;
    }

    /** The same judge makes another verdict: worse than any signer. */
    private static boolean isOtherwise(Judged judged) {
        return judged.isSameJudge() && !(judged.again() instanceof Again.Same);
    }

    /** Safe to print: what the file's writer wrote cannot move the cursor or pass for a line of its own. */
    static List<String> lines(Verification verification, Optional<SignerKey> known) {
        List<String> lines = new ArrayList<>();
        if (verification instanceof Unreadable unreadable) {
            lines.add("CANNOT BE READ: " + unreadable.why());
        } else if (verification instanceof Damaged damaged) {
            damaged.harms().forEach(harm -> lines.add("DAMAGED: " + harm.part() + ": " + harm.why()));
        } else if (verification instanceof Judged judged) {
            account(judged.account(), lines);
            lines.add("signed     " + signed(judged.signer(), known));
            again(judged, lines);
        }
        return lines.stream().map(VerificationText::printable).toList();
    }

    private static void account(Account account, List<String> lines) {
        lines.add(String.format(
                "intact     %d parts in %d bytes, each as it was sealed", account.parts(), account.bytes()));
        lines.add("cell       " + account.tag() + " (passage " + account.passage() + ")");
        lines.add(
                account.simulatedSpeed() > 0
                        ? "simulated  YES, at " + account.simulatedSpeed() + " times real time: no real cell"
                        : "simulated  no");
        lines.add("readings   " + account.readings()
                + account.firstUtc().map(first -> ", from " + first).orElse("")
                + account.lastUtc().map(last -> " to " + last).orElse(""));
        lines.add("verdict    " + account.phase() + ": " + account.reason());
        lines.add("           " + account.phaseChanges() + " phase changes, " + account.findings() + " findings, by "
                + account.software() + ", judge version " + account.judgeVersion());
        account.cautions().forEach(caution -> lines.add("caution    " + caution));
    }

    private static String signed(Optional<SignerKey> signer, Optional<SignerKey> known) {
        if (signer.isEmpty()) {
            return known.isEmpty() ? "by nobody" : "BY NOBODY, not by the key you named";
        }
        if (known.isEmpty()) {
            return "by " + signer.get() + ", not known to you: compare it, or name the key you know by --key";
        }
        return signer.equals(known) ? "by the key you named" : "BY ANOTHER KEY than you named: " + signer.get();
    }

    private static void again(Judged judged, List<String> lines) {
        String by = judged.isSameJudge()
                ? "judged again by version "
                : "made by version " + judged.account().judgeVersion() + " of the judge; judged again by version ";
        String begin = by + judged.byVersion() + ": ";
        if (judged.again() instanceof Again.Same) {
            lines.add((judged.isSameJudge() ? "VERIFIED: " : "INTACT, ANOTHER JUDGE: ") + begin + "the same verdict");
        } else if (judged.again() instanceof Again.Different different) {
            lines.add(
                    (judged.isSameJudge() ? "NOT VERIFIED: " : "INTACT, ANOTHER JUDGE: ") + begin + "another verdict");
            lines.add("           " + different.first());
        } else if (judged.again() instanceof Again.Impossible impossible) {
            lines.add("INTACT, ANOTHER JUDGE: " + begin + "it cannot be: " + impossible.why());
        }
    }

    private static String printable(String line) {
        var text = new StringBuilder();
        line.codePoints().limit(LINE_MOST).forEach(point -> {
            int type = Character.getType(point);
            boolean shows = type != Character.CONTROL
                    && type != Character.FORMAT
                    && type != Character.SURROGATE
                    && type != Character.LINE_SEPARATOR
                    && type != Character.PARAGRAPH_SEPARATOR;
            text.appendCodePoint(shows ? point : '?');
        });
        return text.toString();
    }
}
