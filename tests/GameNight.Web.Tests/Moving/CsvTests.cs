using System.Text;
using GameNight.Web.Moving;

namespace GameNight.Web.Tests.Moving;

public class CsvTests
{
    [Theory]
    [InlineData("=1+1", "'=1+1")]
    [InlineData("+49 170", "'+49 170")]
    [InlineData("-5", "'-5")]
    [InlineData("@somebody", "'@somebody")]
    [InlineData("\tindented", "'\tindented")]
    [InlineData("\rreturned", "'\rreturned")]
    [InlineData("'s Gravenhage", "''s Gravenhage")]
    [InlineData("Zoë", "Zoë")]
    [InlineData("", "")]
    public void A_cell_is_no_formula_and_can_be_had_back(string text, string cell)
    {
        Assert.Equal(cell, Csv.Neutral(text));
        Assert.Equal(text, Csv.Original(cell));
    }

    [Fact]
    public void Rows_are_written_as_the_standard_has_them()
    {
        var bytes = Csv.Write(["name", "slices"], [["Ana, \"the Ace\"", 2.5], ["two\r\nlines", null], ["=cmd|' /C calc'!A0", -1]]);

        Assert.Equal(
            "\uFEFFname,slices\r\n\"Ana, \"\"the Ace\"\"\",2.5\r\n\"two\r\nlines\",\r\n'=cmd|' /C calc'!A0,'-1\r\n",
            Encoding.UTF8.GetString(bytes));
        Assert.Equal([0xEF, 0xBB, 0xBF], bytes[..3]);
    }

    [Theory]
    [InlineData("Thursday table", "thursday-table")]
    [InlineData("  Ünï \"quoted\"; ../../etc\r\nSet-Cookie: a=b ", "uni-quoted-etc-set-cookie-a-b")]
    [InlineData("木曜日", "group")]
    [InlineData("", "group")]
    public void A_file_is_named_so_that_nothing_reads_it_otherwise(string about, string name) =>
        Assert.Equal(name, Download.Plain(about));

    [Fact]
    public void A_long_name_is_cut() => Assert.Equal(60, Download.Plain(new string('a', 500)).Length);
}
