using System.Text;
using PileController.Control.Modes;

namespace PileController.Control.Decisions.Wording;

/// <summary>Who holds what by hand, and whether backup heat runs.</summary>
internal static class HoldWords
{
    public static void Add(StringBuilder text, Decision decision)
    {
        foreach (HandHold hand in decision.Hands)
        {
            // Until it is let, a hold waits: the trip or the work on the rig comes first.
            string does = decision.Mode is Mode.Tripped or Mode.Servicing ? "has asked for" : "holds";
            text.Append(' ').Append(Who(hand)).Append(' ').Append(does).Append(" the ").Append(HandRule.Name(hand.Actuator)).Append(' ');
            text.Append(hand.Actuator == Actuator.Backup ? hand.Value > 0.5 ? "on" : "off" : "at " + Figures.Share(hand.Value));
            text.Append(does == "holds" ? " by hand." : " by hand; it waits until the rig may run.");
        }

        if (decision.Outputs.BackupOn)
        {
            text.Append(" Backup heat is on.");
        }
    }

    private static string Who(HandHold hand) => string.IsNullOrWhiteSpace(hand.Who) ? "Somebody" : hand.Who;
}
