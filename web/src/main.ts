import { mount } from "svelte";
import App from "./App.svelte";
import "./styles.css";

const book = document.getElementById("book");
if (book) mount(App, { target: book });
