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

    // A spell: so cold even the thrifty course leaves the house in the hours ahead, K·h; it is over at half of that.
    private const double SpellKelvinHours = 1;
    private const double SpellOverShare = 0.5;

    /// <summary>Finds the best course.</summary>
    /// <param name="task">Where it begins, and the hours to come: 1 to <see cref="MostHours"/>.</param>
    /// <param name="kept">The course that is followed now.</param>
    public static Course Solve(in HorizonTask task, Course kept)
    {
        Foretold thrifty = CourseRoll.Live(task, Course.Thrifty);
        bool spell = thrifty.ColdDegreeHours >= SpellKelvinHours * (kept == Course.Spell ? SpellOverShare : 1);
        Course from = kept == Course.Spell && !spell ? Course.Thrifty : kept;
        Course best = from;
        double least = (from == Course.Thrifty ? thrifty : CourseRoll.Live(task, from)).Cost - LeastGain;
        foreach (Course course in Course.All)
        {
            if (course == from || (course == Course.Spell && !spell))
            {
                continue;
            }

            double cost = (course == Course.Thrifty ? thrifty : CourseRoll.Live(task, course)).Cost;
            if (cost < least)
            {
                least = cost;
                best = course;
            }
        }

        return best;
    }
}
