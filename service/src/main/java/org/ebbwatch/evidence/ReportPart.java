package org.ebbwatch.evidence;

import java.io.IOException;
import org.ebbwatch.evidence.json.JsonObject;
import org.ebbwatch.evidence.report.Report;
import org.ebbwatch.evidence.signature.SignerKey;

/** The part {@code report.pdf}: what the record says, for a person. */
final class ReportPart {
    static final String PATH = "report.pdf";

    private ReportPart() {}

    static byte[] of(byte[] record, Telling telling, SignerKey signer) throws IOException {
        return Report.of(JsonObject.read(record), telling.curve(), signer.toString());
    }
}
