package org.ebbwatch.intake.photo;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.awt.Color;
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.zip.CRC32;
import javax.imageio.ImageIO;
import javax.imageio.ImageWriteParam;
import javax.imageio.ImageWriter;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.Size;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Photos are told by their content and kept without what a camera wrote beside them. Pictures are read back by the JDK's own reader. */
class StrippedPhotoTest {
    private static final String SECRET = "GPS 52.1 N 4.3 E, owner Jo";

    private static BufferedImage picture() {
        var image = new BufferedImage(40, 24, BufferedImage.TYPE_INT_RGB);
        for (int x = 0; x < 40; x++) {
            for (int y = 0; y < 24; y++) {
                image.setRGB(x, y, new Color(6 * x, 10 * y, 128).getRGB());
            }
        }
        return image;
    }

    private static byte[] jpeg(boolean progressive) throws IOException {
        var out = new ByteArrayOutputStream();
        ImageWriter writer = ImageIO.getImageWritersByFormatName("jpeg").next();
        ImageWriteParam parameters = writer.getDefaultWriteParam();
        if (progressive) {
            parameters.setProgressiveMode(ImageWriteParam.MODE_DEFAULT);
        }
        try (var stream = ImageIO.createImageOutputStream(out)) {
            writer.setOutput(stream);
            writer.write(null, new javax.imageio.IIOImage(picture(), null, null), parameters);
        }
        return out.toByteArray();
    }

    private static byte[] png() throws IOException {
        var out = new ByteArrayOutputStream();
        ImageIO.write(picture(), "png", out);
        return out.toByteArray();
    }

    /** Puts segments in after the start of a JPEG. */
    private static byte[] with(byte[] jpeg, byte[]... segments) {
        var out = new ByteArrayOutputStream();
        out.write(jpeg, 0, 2);
        for (byte[] segment : segments) {
            out.writeBytes(segment);
        }
        out.write(jpeg, 2, jpeg.length - 2);
        return out.toByteArray();
    }

    private static byte[] segment(int marker, byte[] content) {
        return ByteBuffer.allocate(content.length + 4)
                .put((byte) 0xFF)
                .put((byte) marker)
                .putShort((short) (content.length + 2))
                .put(content)
                .array();
    }

    /** An Exif block in Intel order: a description that tells too much, then an orientation. */
    private static byte[] exif(int orientation) {
        byte[] secret = SECRET.getBytes(StandardCharsets.US_ASCII);
        ByteBuffer exif = ByteBuffer.allocate(6 + 8 + 2 + 24 + 4 + secret.length);
        exif.put("Exif\0\0".getBytes(StandardCharsets.US_ASCII));
        exif.order(java.nio.ByteOrder.LITTLE_ENDIAN).put("II".getBytes(StandardCharsets.US_ASCII));
        exif.putShort((short) 42).putInt(8).putShort((short) 2);
        exif.putShort((short) 0x010E).putShort((short) 2).putInt(secret.length).putInt(8 + 2 + 24 + 4);
        exif.putShort((short) 0x0112)
                .putShort((short) 3)
                .putInt(1)
                .putShort((short) orientation)
                .putShort((short) 0);
        exif.putInt(0).put(secret);
        return segment(0xE1, exif.array());
    }

    private static byte[] chunk(String name, byte[] content) {
        byte[] named = name.getBytes(StandardCharsets.US_ASCII);
        var crc = new CRC32();
        crc.update(named);
        crc.update(content);
        return ByteBuffer.allocate(content.length + 12)
                .putInt(content.length)
                .put(named)
                .put(content)
                .putInt((int) crc.getValue())
                .array();
    }

    /** Puts chunks in after the header of a PNG: 8 of signature and 25 of IHDR. */
    private static byte[] withChunk(byte[] png, byte[] chunk) {
        var out = new ByteArrayOutputStream();
        out.write(png, 0, 33);
        out.writeBytes(chunk);
        out.write(png, 33, png.length - 33);
        return out.toByteArray();
    }

    private static boolean tells(byte[] content, String text) {
        return new String(content, StandardCharsets.ISO_8859_1).contains(text);
    }

    private static void same(byte[] one, byte[] other) throws IOException {
        BufferedImage a = ImageIO.read(new ByteArrayInputStream(one));
        BufferedImage b = ImageIO.read(new ByteArrayInputStream(other));
        for (int x = 0; x < a.getWidth(); x++) {
            for (int y = 0; y < a.getHeight(); y++) {
                assertThat(b.getRGB(x, y)).isEqualTo(a.getRGB(x, y));
            }
        }
    }

    @ParameterizedTest
    @ValueSource(booleans = {false, true})
    void a_jpeg_loses_place_owner_and_comments_and_no_pixel(boolean progressive) throws Exception {
        byte[] secret = SECRET.getBytes(StandardCharsets.US_ASCII);
        byte[] plain = jpeg(progressive);
        byte[] telling = with(
                plain,
                exif(1),
                segment(0xFE, secret),
                segment(0xE2, secret),
                segment(0xED, secret),
                segment(0xEE, secret));

        StrippedPhoto kept = StrippedPhoto.of(telling);

        assertThat(kept.type()).isEqualTo(PhotoType.JPEG);
        assertThat(tells(telling, SECRET)).isTrue();
        assertThat(tells(kept.content(), "GPS")).isFalse();
        same(plain, kept.content());
    }

    @Test
    void which_way_is_up_stays() throws Exception {
        byte[] kept = StrippedPhoto.of(with(jpeg(false), exif(6))).content();

        int exif = new String(kept, StandardCharsets.ISO_8859_1).indexOf("Exif");
        assertThat(exif).isPositive();
        // after "Exif", two zeros, 8 of header, 2 of count: tag 0112, type 3, count 1, value 6
        assertThat(Arrays.copyOfRange(kept, exif + 16, exif + 26)).containsExactly(0x01, 0x12, 0, 3, 0, 0, 0, 1, 0, 6);
        same(jpeg(false), kept);
    }

    @Test
    void what_is_stripped_stays_as_it_is_when_it_is_stripped_again() throws Exception {
        byte[] once = StrippedPhoto.of(with(jpeg(true), exif(3))).content();

        assertThat(StrippedPhoto.of(once).content()).isEqualTo(once);
    }

    @Test
    void what_hangs_behind_the_end_of_a_picture_is_gone() throws Exception {
        byte[] film = SECRET.getBytes(StandardCharsets.US_ASCII);
        byte[] jpeg = Arrays.copyOf(jpeg(false), jpeg(false).length + film.length);
        System.arraycopy(film, 0, jpeg, jpeg.length - film.length, film.length);
        byte[] png = Arrays.copyOf(png(), png().length + film.length);
        System.arraycopy(film, 0, png, png.length - film.length, film.length);

        assertThat(tells(StrippedPhoto.of(jpeg).content(), SECRET)).isFalse();
        assertThat(tells(StrippedPhoto.of(png).content(), SECRET)).isFalse();
    }

    @ParameterizedTest
    @ValueSource(strings = {"tEXt", "iTXt", "zTXt", "eXIf", "tIME", "iCCP", "prVt"})
    void a_png_loses_every_text_and_no_pixel(String name) throws Exception {
        byte[] telling = withChunk(png(), chunk(name, SECRET.getBytes(StandardCharsets.US_ASCII)));

        StrippedPhoto kept = StrippedPhoto.of(telling);

        assertThat(kept.type()).isEqualTo(PhotoType.PNG);
        assertThat(tells(telling, SECRET)).isTrue();
        assertThat(tells(kept.content(), SECRET)).isFalse();
        same(png(), kept.content());
    }

    @Test
    void what_is_no_photo_is_refused_whatever_it_is_called() {
        for (String content : new String[] {"", "\u00ff", "<svg onload='x()'/>", "GIF89a....", "%PDF-1.7", "BM0000"}) {
            assertThatThrownBy(() -> StrippedPhoto.of(content.getBytes(StandardCharsets.ISO_8859_1)))
                    .isInstanceOf(UnfitPhotoException.class)
                    .hasMessageContaining("neither a JPEG nor a PNG");
        }
    }

    @Test
    void what_is_too_large_is_refused_with_how_much_is_taken() {
        assertThatThrownBy(() -> StrippedPhoto.of(new byte[StrippedPhoto.MOST_BYTES + 1]))
                .hasMessageContaining("at most " + StrippedPhoto.MOST_BYTES);
    }

    @Test
    void a_picture_that_would_unfold_to_more_pixels_than_a_reader_bears_is_refused() throws Exception {
        byte[] png = png();
        ByteBuffer header = ByteBuffer.allocate(13).put(png, 16, 13);
        header.putInt(0, 50_000).putInt(4, 50_000);
        byte[] huge = png.clone();
        System.arraycopy(chunk("IHDR", header.array()), 0, huge, 8, 25);

        assertThatThrownBy(() -> StrippedPhoto.of(huge)).hasMessageContaining("50000 by 50000");
    }

    @Property(tries = 300)
    void a_photo_cut_off_anywhere_is_refused_and_nothing_else_happens(@ForAll @IntRange(min = 4, max = 400) int length)
            throws Exception {
        for (byte[] whole : new byte[][] {jpeg(false), png()}) {
            byte[] cut = Arrays.copyOf(whole, Math.min(length, whole.length - 3));
            assertThatThrownBy(() -> StrippedPhoto.of(cut)).isInstanceOf(UnfitPhotoException.class);
        }
    }

    @Property(tries = 500)
    void whatever_is_sent_is_kept_or_refused(@ForAll @Size(max = 300) byte[] noise, @ForAll @IntRange(max = 3) int as) {
        byte[][] beginnings = {
            {},
            {(byte) 0xFF, (byte) 0xD8, (byte) 0xFF},
            {(byte) 0x89, 'P', 'N', 'G', '\r', '\n', 0x1A, '\n'},
            {(byte) 0xFF}
        };
        byte[] sent = Arrays.copyOf(beginnings[as], beginnings[as].length + noise.length);
        System.arraycopy(noise, 0, sent, beginnings[as].length, noise.length);
        try {
            assertThat(StrippedPhoto.of(sent).content()).isNotEmpty();
        } catch (UnfitPhotoException refused) {
            assertThat(refused).hasMessageEndingWith(".");
        }
    }
}
