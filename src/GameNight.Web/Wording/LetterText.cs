using GameNight.Nights.Messages;
using GameNight.Nights.Records;
using GameNight.Planning.Timeline;
using GameNight.Web.Startup;
using GameNight.Web.Wording.Texts;

namespace GameNight.Web.Wording;

/// <summary>A message in words.</summary>
/// <param name="Stop">How a guest stops messages; only a mail says it.</param>
internal sealed record LetterWords(
    string Subject, IReadOnlyList<string> Paragraphs, string LinkLabel, Uri Link, string Closing, string Stop, string StopLabel)
{
    /// <summary>As text to send or to pass on.</summary>
    public string AsText() => string.Join("\n\n", [.. Paragraphs, $"{LinkLabel}:\n{Link}", Closing]);
}

/// <summary>
/// What messages say: who, what, when, and the link. The address only for who comes, and never a word of what anybody must not
/// eat.
/// </summary>
internal static class LetterText
{
    public static LetterWords Say(Letter letter, Uri publicAddress)
    {
        var night = letter.Night;
        var title = OneLine(night.Title);
        var when = When(night.ServeAt, night.Zone);
        var (subject, lead) = letter.Kind switch
        {
            MessageKind.Invitation when letter.OutOfEvenings is not null => (Phrase.Fill(Letters.ChosenSubject, title, QuantityText.DayAndTime(night.ServeAt)), Phrase.Fill(Letters.Chosen, OneLine(night.GroupName), title, when)),
            MessageKind.Invitation => (Phrase.Fill(Letters.InvitationSubject, title, QuantityText.DayAndTime(night.ServeAt)), Phrase.Fill(Letters.Invitation, OneLine(night.GroupName), title, when)),
            MessageKind.Reminder => (Phrase.Fill(Letters.ReminderSubject, title), Phrase.Fill(Letters.Reminder, title, when)),
            MessageKind.Change => (Phrase.Fill(Letters.ChangeSubject, title, QuantityText.DayAndTime(night.ServeAt)), Changed(letter, title, when)),
            MessageKind.Cancellation => (Phrase.Fill(Letters.CancellationSubject, title), Phrase.Fill(Letters.Cancellation, title, when)),
            MessageKind.Reinstatement => (Phrase.Fill(Letters.ReinstatementSubject, title), Phrase.Fill(Letters.Reinstatement, title, when)),
            MessageKind.Thanks => (Phrase.Fill(Letters.ThanksSubject, title), Phrase.Fill(Letters.Thanks, title)),
            MessageKind.Seat => (Phrase.Fill(Letters.SeatSubject, title), Phrase.Fill(Letters.Seat, title, when)),
            var other => throw new InvalidOperationException($"Unknown kind {other}."),
        };
        var isThanks = letter.Kind == MessageKind.Thanks;
        return new LetterWords(
            OneLine(subject),
            [Phrase.Fill(Letters.Greeting, OneLine(letter.GuestName)), lead, .. Facts(letter)],
            isThanks ? Letters.LookBackLink : letter.Kind is MessageKind.Invitation or MessageKind.Reminder ? Letters.AnswerLink : Letters.PageLink,
            new Uri(publicAddress, isThanks ? $"{SecretPaths.LookBack}/{letter.LookBack.Text}" : $"{SecretPaths.Answer}/{letter.Answer.Text}"),
            letter.HostNames.Length > 0 ? OneLine(letter.HostNames) : OneLine(night.GroupName),
            Phrase.Fill(Letters.Stop, OneLine(night.GroupName)),
            Letters.StopLabel);
    }

    /// <summary>The question for a date: only what is asked, and nothing of what others say.</summary>
    public static LetterWords Say(QuestionLetter letter, Uri publicAddress)
    {
        var (group, title) = (OneLine(letter.GroupName), OneLine(letter.Title));
        return new LetterWords(
            OneLine(Phrase.Fill(Letters.QuestionSubject, title)),
            [
                Phrase.Fill(Letters.Greeting, OneLine(letter.GuestName)),
                Phrase.Fill(Letters.Question, group, title),
                string.Join('\n', letter.Evenings.Select(evening => Phrase.Fill(Letters.QuestionEvening, QuantityText.DayAndTime(evening), letter.Zone))),
                Phrase.Fill(Letters.QuestionUntil, QuantityText.ShortDayAndTime(letter.OpenUntil)),
            ],
            Letters.QuestionLink,
            new Uri(publicAddress, $"{SecretPaths.Dates}/{letter.Answer.Text}"),
            letter.HostNames.Length > 0 ? OneLine(letter.HostNames) : group,
            Phrase.Fill(Letters.Stop, group),
            Letters.StopLabel);
    }

    /// <summary>
    /// Work that begins soon. Steps of the host's own are not called by their names: what somebody types may say who eats what.
    /// </summary>
    public static LetterWords Say(WorkLetter letter, Uri publicAddress)
    {
        var (group, title) = (OneLine(letter.GroupName), OneLine(letter.Title));
        var (from, until) = (At(letter.Stretch.From), At(letter.Stretch.Until));
        var first = letter.Stretch.Steps[0];
        return new LetterWords(
            OneLine(Phrase.Fill(Letters.WorkSubject, QuantityText.Time(from.TimeOfDay), LiveText.Do(first.Kind, first.Number, OwnStepNames.None), title)),
            [
                Phrase.Fill(Letters.Greeting, OneLine(letter.HostName)),
                Phrase.Fill(Letters.Work, title, QuantityText.ShortDayAndTime(from), from.Date == until.Date ? QuantityText.Time(until.TimeOfDay) : QuantityText.ShortDayAndTime(until)),
                string.Join('\n', Lines()),
            ],
            Letters.WorkLink,
            new Uri(publicAddress, $"g/{letter.Group}/n/{letter.Night}/timeline"),
            group,
            Letters.WorkStop,
            Letters.WorkStopLabel);

        NodaTime.LocalDateTime At(NodaTime.Instant at) => QuantityText.Local(at, letter.Zone);

        // Pies are many and all alike: one line for all of them.
        IEnumerable<string> Lines() =>
        [
            .. letter.Stretch.Steps.Where(step => !IsOfPie(step.Kind)).Select(step => (step.Start, What: LiveText.Do(step.Kind, step.Number, OwnStepNames.None)))
                .Concat(letter.Stretch.Steps.Where(step => IsOfPie(step.Kind)).Take(1).Select(step => (step.Start, What: Letters.WorkPies)))
                .OrderBy(line => line.Start).Select(line => Phrase.Fill(Letters.WorkStep, QuantityText.Time(At(line.Start).TimeOfDay), line.What)),
        ];

        static bool IsOfPie(StepKind kind) => kind is StepKind.Shape or StepKind.Top or StepKind.Bake or StepKind.Rack or StepKind.Serve;
    }

    /// <summary>What people typed cannot begin a line of its own, in a header least of all.</summary>
    public static string OneLine(string text) =>
        string.Join(' ', text.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries)
            .Select(word => new string([.. word.Where(letter => !char.IsControl(letter))])));

    private static string Changed(Letter letter, string title, string when)
    {
        List<string> said = [];
        if (letter.Moved is { } moved)
        {
            said.Add(Phrase.Fill(Letters.Moved, title, When(moved.From, moved.FromZone), when));
        }

        if (letter.IsElsewhere)
        {
            said.Add(letter.Night.Address is { } address
                ? Phrase.Fill(Letters.NewPlace, title, OneLine(address))
                : Phrase.Fill(Letters.NewPlaceOnPage, title));
        }

        return string.Join('\n', said);
    }

    private static IEnumerable<string> Facts(Letter letter)
    {
        var isAhead = letter.Kind is not (MessageKind.Cancellation or MessageKind.Thanks);
        if (isAhead && letter.Kind != MessageKind.Reminder && letter.Night.Address is { } address && !letter.IsElsewhere)
        {
            yield return Phrase.Fill(Letters.Place, OneLine(address));
        }

        if (letter.Kind == MessageKind.Invitation && letter.Bring.Length > 0)
        {
            yield return Phrase.Fill(GuestPages.ToBring, OneLine(letter.Bring));
        }

        if (letter.Kind is MessageKind.Invitation or MessageKind.Reminder && letter.AnswerBy is { } by)
        {
            yield return Phrase.Fill(Letters.AnswerBy, QuantityText.Moment(by, letter.Night.Zone));
        }

        if (letter.Kind is MessageKind.Change or MessageKind.Reinstatement && letter.Night.Presence is not null)
        {
            yield return Letters.DoesItHold;
        }
    }

    private static string When(NodaTime.LocalDateTime at, string zone) =>
        Phrase.Fill(GuestPages.AtInZone, QuantityText.DayAndTime(at), zone);
}
