namespace PileController.Control.Foresight;

/// <summary>
/// The receding horizon: lives each course through the hours ahead on the models of heap and house, takes the best and
/// begins with it; a quarter of an hour later it looks again. It always ends after the same few runs, so its time is
/// bounded, and the same beliefs give the same course.
/// </summary>
/// <remarks>
/// What lies beyond the hours it sees is in the value of the heat that is left: a heap short of the season's reserve will
/// be missed in the weeks to come. A course other than the one that is kept has to be better by a little, or it would change back
/// and forth with every breath of wind.
/// </remarks>
public static class Horizon
{
    /// <summary>How often it looks, s.</summary>
    public const double SolveSeconds = 900;

    /// <summary>Furthest it looks, h.</summary>
    public const int MostHours = 96;

    // By so much a course must be better than the one that is kept, K·h.
    private const double LeastGain = 0.5;

    // A spell: so cold the thrifty course leaves the house in the hours ahead, K·h; it is over at a quarter of that.
    private const double SpellKelvinHours = 1;
    private const double SpellOverShare = 0.25;

    /// <summary>Finds the best course.</summary>
    /// <param name="task">Where it begins, and the hours to come: 1 to <see cref="MostHours"/>.</param>
    /// <param name="kept">The course that is followed now.</param>
    public static Course Solve(in HorizonTask task, Course kept)
    {
        // In a spell the thrifty course is weighed as it is followed then.
        Course thrifty = kept == Course.Spell ? Course.Spell : Course.Thrifty;
        Course best = kept;
        Foretold foretold = CourseRoll.Live(task, kept);
        double least = foretold.Cost - LeastGain;
        foreach (Course weighed in Course.All)
        {
            Course course = weighed == Course.Thrifty ? thrifty : weighed;
            if (course == kept)
            {
                continue;
            }

            Foretold other = CourseRoll.Live(task, course);
            if (other.Cost < least)
            {
                least = other.Cost;
                best = course;
                foretold = other;
            }
        }

        if (best != thrifty)
        {
            return best;
        }

        bool spell = foretold.ColdDegreeHours >= SpellKelvinHours * (kept == Course.Spell ? SpellOverShare : 1);
        return spell ? Course.Spell : Course.Thrifty;
    }
}
