using System.Buffers.Binary;
using GameNight.Planning.Toppings;
using GameNight.Web.Drawings;
using GameNight.Web.Host.Pies;
using GameNight.Web.Host.Print;
using GameNight.Web.Tests.Panels;
using GameNight.Web.Tests.Print;
using GameNight.Web.Wording.Texts;
using NodaTime;
using SkiaSharp;

namespace GameNight.Web.Tests.Drawings;

public class PiePictureTests
{
    private static readonly IReadOnlySet<string> NoBases = new HashSet<string>();
    private static readonly PieNames Names = new(Paper.Split, Plans.Items);

    [Fact]
    public void It_is_a_png_of_the_promised_width_and_as_high_as_its_text_needs()
    {
        var (few, many) = (Png(Paper.Split), Png(Many(30)));

        Assert.Equal([0x89, 0x50, 0x4E, 0x47, 0x0D, 0x0A, 0x1A, 0x0A], few[..8]);
        Assert.Equal("IHDR", System.Text.Encoding.ASCII.GetString(few, 12, 4));
        Assert.Equal(PiePicture.Width, Of(few, 16));
        Assert.InRange(Of(few, 20), 600, 2000);
        Assert.True(Of(many, 20) > Of(few, 20), "thirty kinds of pies take more room than three");

        static int Of(byte[] png, int at) => BinaryPrimitives.ReadInt32BigEndian(png.AsSpan(at, 4));
    }

    [Fact]
    public void Pies_letters_and_words_are_painted_and_the_rim_of_the_paper_is_not()
    {
        using var picture = SKBitmap.Decode(Png(Paper.Split));
        var colours = Enumerable.Range(0, picture.Width / 4).SelectMany(x => Enumerable.Range(0, picture.Height / 4).Select(y => picture.GetPixel(x * 4, y * 4))).ToHashSet();

        Assert.Contains(SKColor.Parse("#b9783a"), colours);
        Assert.Contains(SKColor.Parse("#e8b1a2"), colours);
        Assert.Contains(SKColor.Parse("#24262b"), colours);
        Assert.All(Enumerable.Range(0, picture.Height), y => Assert.Equal(SKColor.Parse("#fffdf8"), picture.GetPixel(10, y)));
    }

    [Fact]
    public void It_says_what_is_on_the_pies_and_whom_to_ask_and_names_nobody()
    {
        var text = PieSharing.Text(Night, Paper.Split, Names);
        var all = string.Join('\n', [text.Title, text.When, .. text.Pies.Select(pie => pie.Called + pie.Note), .. text.OnIt.Select(row => row.OnIt), .. text.Cautions]);

        Assert.Equal(["Pie 1", "Pie 2", "Pies 3 and 4"], text.Pies.Select(pie => pie.Called));
        Assert.Contains(PrintPages.AskFirst, text.Cautions);
        Assert.Contains("Anchovies", all, StringComparison.Ordinal);
        Assert.All(Plans.Names.Values, name => Assert.DoesNotContain(name, all, StringComparison.Ordinal));
    }

    [Fact]
    public void A_pie_of_the_second_dough_stands_by_itself_and_says_so()
    {
        var split = Paper.Split with { Pies = [.. Paper.Split.Pies.Select(pie => pie.Number == 3 ? pie with { OnSecondDough = true } : pie)] };

        var text = PieSharing.Text(Night, split, Names, "maize dough");

        Assert.Equal(["Pie 1", "Pie 2", "Pie 3", "Pie 4"], text.Pies.Select(pie => pie.Called));
        Assert.Equal("on maize dough: ask first", text.Pies[2].Note);
        Assert.Contains("not fit for coeliacs", text.Cautions[^1], StringComparison.Ordinal);
    }

    [Fact]
    public void The_same_pies_give_the_same_picture() => Assert.Equal(Png(Paper.Split), Png(Paper.Split));

    private static GameNight.Nights.Records.NightFacts Night => new(
        "Board games", new LocalDateTime(2026, 12, 12, 18, 30), null, Plans.Zone, "", "", default, new Planning.Quantities.Share(0.1), 40, 48, 72, 2);

    private static ToppingSplit Many(int kinds) => Paper.Split with
    {
        Pies = [.. Enumerable.Range(1, kinds).Select(number => new PieOrder(number, [new Sector("A", number % 2 == 0 ? 4 : 2), new Sector("B", number % 2 == 0 ? 4 : 6)], [$"own-{number}"]))],
    };

    private static byte[] Png(ToppingSplit split) => PiePicture.Png(
        PieSharing.Text(Night, split, Names) with { Pies = [.. split.Pies.Select(pie => (pie, $"Pie {pie.Number}", (string?)null))] },
        Names.Combinations, NoBases, NoBases);
}
