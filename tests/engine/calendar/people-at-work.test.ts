import { expect, test } from 'vitest';
import { peopleAtWork } from '../../../src/engine/calendar/people-at-work.ts';

const there = (start: number, end: number, crew = 1) => ({ start, end, crew });
const task = (start: number, end: number, people = 1) => ({ start, end, people });
const tasksOf = (...[windows, tasks]: Parameters<typeof peopleAtWork>) =>
  peopleAtWork(windows, tasks).map((one) => one.tasks);

test('who leaves early is asked first for what fits into those hours', () => {
  expect(tasksOf([there(0, 100), there(20, 60)], [task(0, 30), task(20, 50), task(50, 100)])).toEqual([[0, 2], [1]]);
});

test('what asks for two takes both, and what comes after it waits for neither in vain', () => {
  expect(tasksOf([there(0, 60, 2)], [task(0, 10), task(10, 20, 2), task(20, 30), task(20, 25)])).toEqual([
    [0, 1, 2],
    [1, 3],
  ]);
});

test('who comes when another leaves takes the same place', () => {
  expect(peopleAtWork([there(0, 60), there(60, 90)], [task(50, 70)])).toEqual([{ start: 0, end: 90, tasks: [0] }]);
});

test('the order in which tasks are given means nothing', () => {
  expect(tasksOf([there(0, 60)], [task(30, 40), task(0, 10)])).toEqual([[1, 0]]);
});

test('nobody does two things at once, also where more is asked for than people are there', () => {
  expect(tasksOf([there(0, 60)], [task(0, 10), task(5, 15), task(10, 20, 3)])).toEqual([[0, 2]]);
});
